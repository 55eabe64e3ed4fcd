"""The order itself, line by line; and the part of it that is about one topic."""

from collections.abc import Sequence

from app.documents.order_book import OrderBook
from app.documents.workbook_table import USUAL, WIDE, Cell, Column, Row, Table, table
from app.order.line_words import to_hundredth
from app.order.values import TOPICS, Line

COLUMNS = (
    Column("Item", WIDE),
    Column("Kind", USUAL),
    Column("Net", decimals=2),
    Column("Overage", decimals=2),
    Column("Order", decimals=2),
    Column("Unit"),
    Column("Colour", USUAL),
    Column("Size", USUAL),
    Column("Cartons"),
    Column("Pallets"),
    Column("Packs"),
    Column("Weight", decimals=1),
    Column("Weight in"),
    Column("Overage because", WIDE),
    Column("Counted", 2 * WIDE),
)
PACKS = ("carton", "pallet", "pack")


def order(book: OrderBook) -> Table:
    """Every line of the order, what is for information too."""
    return _lines("Order", book.takeoff.lines)


def sundries(book: OrderBook) -> Table:
    """The lines of fixings and sundries, edge pieces with them."""
    topics = TOPICS[2:4]
    return _lines(
        "Fixings and sundries",
        [line for line in book.takeoff.lines if line.topic in topics and line.unit != "sheet"],
    )


def _lines(name: str, lines: Sequence[Line]) -> Table:
    return table(name, COLUMNS, map(_row, lines))


def _row(line: Line) -> Row:
    counts = {pack.name: pack.count for pack in line.packs}
    packs: list[Cell] = [counts.get(name) for name in PACKS]
    numbers = to_hundredth(line.net), to_hundredth(line.overage), to_hundredth(line.order)
    weight = None if line.weight is None else round(line.weight, 2)
    words = weight, line.weight_unit, line.reason, line.note
    return line.item, line.kind, *numbers, line.unit, line.colour, line.size, *packs, *words
