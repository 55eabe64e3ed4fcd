"""What was delivered, what is placed, and what is short for the casting days ahead."""

from app.documents.order_book import OrderBook
from app.documents.workbook_table import USUAL, WIDE, Column, Row, Table, table
from app.order.values import ShortList, Stock

NO_DAY = "no casting day"


def short(book: OrderBook) -> Table:
    """One row an item of the whole project, and two columns a casting day: needed up to then, and short of it; then
    what was delivered and is no line of the order."""
    found = book.short
    days = [day.day or NO_DAY for day in found.stock[0].days] if found.stock else []
    columns = [
        Column("Item", WIDE),
        Column("Unit"),
        Column("Delivered", decimals=2),
        Column("Used by placed panels", USUAL + 6, 2),
        Column("On hand", decimals=2),
        Column("Used but not noted as delivered", USUAL + 14, 2),
    ]
    for day in days:
        columns += [Column(f"Needed to {day}", USUAL + 8, 2), Column(f"Short on {day}", USUAL + 8, 2)]
    return table("Short", columns, (*map(_row, found.stock), *_unknown(found, book, len(columns))))


def _row(stock: Stock) -> Row:
    days = [_number(value) for day in stock.days for value in (day.needed, day.short)]
    counts = map(_number, (stock.delivered, stock.used, stock.on_hand, stock.unnoted))
    return stock.item, stock.unit, *counts, *days


def _unknown(found: ShortList, book: OrderBook, width: int) -> list[Row]:
    delivered = {item: 0 for item in found.unknown}
    for delivery in book.project.deliveries:
        if delivery.item in delivered:
            delivered[delivery.item] += delivery.count
    rest = (None,) * (width - 3)
    return [(f"{item} (no line of the order)", "", count, *rest) for item, count in delivered.items()]


def _number(value: float) -> float:
    return round(value, 2) if isinstance(value, float) else value
