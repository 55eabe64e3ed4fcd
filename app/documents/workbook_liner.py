"""Liner: every sheet to unpack, and the laid sheets that are cut out of it."""

from collections.abc import Iterator

from app.documents.measure import Measured
from app.documents.order_book import BookPanel, OrderBook
from app.documents.workbook_table import USUAL, WIDE, Column, Row, Table, table

AREA_DECIMALS = 1


def liner_sheets(book: OrderBook) -> Table:
    """One row an unpacked sheet; laid sheets by their numbers on the bed, the first the one it is fetched for."""
    unit = book.unit
    columns = (
        Column("Wall"),
        Column("Panel"),
        Column("Fetched for sheet", USUAL),
        Column("Size", USUAL),
        Column("Bond", USUAL),
        Column("Laid sheets"),
        Column("Cut for sheets", WIDE),
        Column(f"Area laid, {unit}2", USUAL, AREA_DECIMALS),
    )
    return table("Liner sheets", columns, (row for panel in book.panels for row in _sheets(panel, unit)))


def _sheets(panel: BookPanel, unit: str) -> Iterator[Row]:
    for sheet in panel.work.cutting.sheets:
        numbers = ", ".join(str(taken.number) for taken in sheet.taken)
        area = round(Measured(unit).area(sum(taken.area for taken in sheet.taken)), AREA_DECIMALS)
        mould = sheet.owner, sheet.size, sheet.bond
        yield panel.casting.wall, panel.casting.mark, *mould, len(sheet.taken), numbers, area
