"""What each panel takes, and how many bricks of each colour."""

from collections.abc import Iterator

from app.documents.order_book import BookPanel, OrderBook
from app.documents.workbook_table import USUAL, WIDE, Column, Row, Table, table
from app.order.brick_counts import brick_counts
from app.order.line_words import to_hundredth

SHORT_DIGEST = 12
PANEL = (Column("Wall"), Column("Panel"))


def by_panel(book: OrderBook) -> Table:
    """One row a panel and item: net, without overage, every panel cut and unpacked by itself."""
    columns = (
        *PANEL,
        Column("Cast on", USUAL),
        Column("Placed"),
        Column("Item", WIDE),
        Column("Net", decimals=2),
        Column("Unit"),
        Column("Topic", USUAL + 6),
        Column("Layout", USUAL),
    )
    return table("By panel", columns, (row for panel in book.panels for row in _items(panel)))


def _items(panel: BookPanel) -> Iterator[Row]:
    casting = panel.casting
    digest = panel.digest.removeprefix("sha256:")[:SHORT_DIGEST]
    start = casting.wall, casting.mark, casting.cast_on, "yes" if casting.is_placed else "no"
    for line in panel.takeoff.lines:
        yield *start, line.item, to_hundredth(line.net), line.unit, line.topic, digest


def bricks(book: OrderBook) -> Table:
    """One row a panel, size, kind and colour: set whole, cut up, and the pieces out of those; corner units by hand."""
    columns = (
        *PANEL,
        Column("Size", USUAL),
        Column("Kind", USUAL),
        Column("Colour", USUAL),
        Column("Whole"),
        Column("Cut up"),
        Column("Pieces"),
        Column("Bricks"),
    )
    return table("Bricks and colours", columns, (row for panel in book.panels for row in _bricks(panel, book)))


def _bricks(panel: BookPanel, book: OrderBook) -> Iterator[Row]:
    casting = panel.casting
    for one in brick_counts([panel.work.face], panel.saw, book.rules):
        counts = one.whole, one.cut_up, one.pieces, one.bricks
        yield casting.wall, casting.mark, one.size, one.kind, one.colour, *counts
    for line in panel.takeoff.lines:
        if line.kind.startswith("corner"):
            yield casting.wall, casting.mark, line.size, line.kind, line.colour, None, None, None, line.net
