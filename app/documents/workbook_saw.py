"""The saw list: pieces to cut, and how bricks are cut up for them."""

from collections.abc import Iterator, Sequence

from app.documents.order_book import OrderBook
from app.documents.workbook_table import USUAL, WIDE, Column, Row, Table, length_cells, length_columns, table
from app.lengths import format_length
from app.order.saw_values import SawPiece, Seat


def saw_pieces(book: OrderBook) -> Table:
    """One row a group of equal pieces: square cuts, rips, notches, skew cuts, bricks rubbed off, then corner units."""
    unit = book.unit
    columns = (
        Column("Size", USUAL),
        Column("Cut from", USUAL),
        Column("Colour", USUAL),
        Column("Cut", USUAL),
        *length_columns("Length", unit),
        *length_columns("Height", unit),
        *length_columns("Return leg", unit),
        Column("Count"),
        Column("Factory end", USUAL),
        Column("Where", 2 * WIDE),
    )
    return table("Saw list", columns, (*_flat(book, unit), *_corners(book, unit)))


def _flat(book: OrderBook, unit: str) -> Iterator[Row]:
    saw = book.saw
    for piece in (*saw.pieces, *saw.rips, *saw.notches, *saw.skews, *saw.rubs):
        end = "one" if piece.has_factory_end else "none needed"
        brick = piece.size, piece.kind, piece.colour
        measures = *length_cells(piece.length, unit), *length_cells(piece.height, unit), None, None
        yield *brick, piece.cut, *measures, piece.count, _end(piece, end), _where(piece.seats)


def _end(piece: SawPiece, words: str) -> str:
    return words if piece.cut == "length" else ""


def _corners(book: OrderBook, unit: str) -> Iterator[Row]:
    for cut in book.saw.corners:
        measures = [cell for value in (cut.face_leg, cut.height, cut.return_leg) for cell in length_cells(value, unit)]
        yield cut.size, f"corner {cut.hand}", cut.colour, cut.cut, *measures, cut.count, "", _where(cut.seats)


def _where(seats: Sequence[Seat]) -> str:
    """How many in each panel."""
    counts: dict[str, int] = {}
    for seat in seats:
        counts[seat.panel] = counts.get(seat.panel, 0) + seat.count
    return ", ".join(f"{panel}: {count}" for panel, count in counts.items())


def saw_patterns(book: OrderBook) -> Table:
    """One row a way to cut a brick across: so many bricks, the pieces from its left end, what is left over."""
    columns = (
        Column("Bricks"),
        Column("Size", USUAL),
        Column("Kind", USUAL),
        Column("Colour", USUAL),
        Column("Pieces, from the left end; * has a factory end", 2 * WIDE),
        *length_columns("Left over", book.unit),
    )
    return table("Saw patterns", columns, _patterns(book))


def _patterns(book: OrderBook) -> Iterator[Row]:
    for pattern in book.saw.patterns:
        pieces = (f"{format_length(cut.length, book.unit)}{' *' * cut.has_factory_end}" for cut in pattern.pieces)
        left = length_cells(pattern.left_over, book.unit)
        yield pattern.times, pattern.size, pattern.kind, pattern.colour, "; ".join(pieces), *left
