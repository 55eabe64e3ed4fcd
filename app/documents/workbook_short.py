"""What was delivered, what is placed, and what is short for the casting days ahead."""

from app.documents.order_book import OrderBook
from app.documents.workbook_table import USUAL, WIDE, Column, Row, Table, table
from app.order.line_words import to_hundredth
from app.order.values import ShortList, Stock

NO_DAY = "panels without a casting day"


def short(book: OrderBook) -> Table:
    """One row an item of the whole project, and two columns a casting day: needed up to then, and short of it; then
    what was delivered and is no line of the order, and what is expected."""
    found = book.short
    days = [day.day for day in found.stock[0].days] if found.stock else []
    columns = [
        Column("Item", WIDE),
        Column("Unit"),
        Column("Delivered", decimals=2),
        Column("Used by placed panels", USUAL + 6, 2),
        Column("On hand", decimals=2),
        Column("Used but not noted as delivered", USUAL + 14, 2),
    ]
    for day in days:
        needed, missing = (f"to {day}", f"on {day}") if day else (f"for {NO_DAY}",) * 2
        columns += [Column(f"Needed {needed}", USUAL + 8, 2), Column(f"Short {missing}", USUAL + 8, 2)]
    return table(
        "Short",
        columns,
        (*map(_row, found.stock), *_unknown(found, book, len(columns)), *_expected(found, len(columns))),
    )


def _row(stock: Stock) -> Row:
    days = [to_hundredth(value) for day in stock.days for value in (day.needed, day.short)]
    counts = map(to_hundredth, (stock.delivered, stock.used, stock.on_hand, stock.unnoted))
    return stock.item, stock.unit, *counts, *days


def _unknown(found: ShortList, book: OrderBook, width: int) -> list[Row]:
    delivered = {item: 0 for item in found.unknown}
    for delivery in book.project.deliveries:
        if delivery.item in delivered and delivery not in found.expected:
            delivered[delivery.item] += delivery.count
    rest = (None,) * (width - 3)
    return [(f"{item} (no line of the order)", "", count, *rest) for item, count in delivered.items()]


def _expected(found: ShortList, width: int) -> list[Row]:
    """Deliveries of later days, which count for nothing yet."""
    rest = (None,) * (width - 3)
    return [(f"{one.item} (expected on {one.day}: {one.count:,})", "", None, *rest) for one in found.expected]
