"""The order as a workbook: one sheet a topic, ready to print. Text is text: nothing in it is computed."""

import io
from collections.abc import Callable
from datetime import UTC, datetime
from typing import Any

import xlsxwriter

from app.documents.order_book import OrderBook
from app.documents.workbook_cover import cover
from app.documents.workbook_liner import liner_sheets
from app.documents.workbook_order import order, sundries
from app.documents.workbook_panels import bricks, by_panel
from app.documents.workbook_saw import saw_patterns, saw_pieces
from app.documents.workbook_short import short
from app.documents.workbook_table import Table
from app.panel.cells import guarded

TOPICS: tuple[Callable[[OrderBook], Table], ...] = (
    cover,
    order,
    by_panel,
    bricks,
    saw_pieces,
    saw_patterns,
    liner_sheets,
    sundries,
    short,
)
OPEN = "Order"
"""The sheet that is shown first."""

A4, LETTER = 9, 1
"""Paper sizes by their numbers in the file format (ECMA-376, ST paperSize)."""


def workbook(book: OrderBook) -> bytes:
    """The whole file, the same for the same book."""
    held = io.BytesIO()
    with xlsxwriter.Workbook(held, {"in_memory": True, "strings_to_formulas": False}) as file:
        made = datetime.combine(book.day, datetime.min.time(), UTC).replace(tzinfo=None)
        file.set_properties({"title": f"{book.project.name}, order, {book.scope}", "created": made})
        formats = _Formats(file)
        for topic in TOPICS:
            table = topic(book)
            sheet = file.add_worksheet(table.name)
            _set_up(sheet, book, table)
            _fill(sheet, table, formats)
    return held.getvalue()


class _Formats:
    """Formats of a file, each made once."""

    def __init__(self, file: Any) -> None:
        self.head = file.add_format({"bold": True, "bottom": 1, "text_wrap": True, "valign": "top"})
        self.text = file.add_format({"text_wrap": True, "valign": "top"})
        self._file = file
        self._numbers: dict[int, Any] = {}

    def number(self, value: float, decimals: int) -> Any:
        """Numbers with a mark every three figures; decimals for what is no whole number."""
        shown = 0 if value == round(value) else decimals
        if shown not in self._numbers:
            code = f"#,##0.{'0' * shown}" if shown else "#,##0"
            self._numbers[shown] = self._file.add_format({"num_format": code, "valign": "top"})
        return self._numbers[shown]


def _set_up(sheet: Any, book: OrderBook, table: Table) -> None:
    """Landscape, one page wide, the head on every page."""
    sheet.set_landscape()
    sheet.set_paper(LETTER if book.unit == "in" else A4)
    sheet.fit_to_pages(1, 0)
    sheet.repeat_rows(0)
    sheet.freeze_panes(1, 0)
    sheet.set_header(f"&L{_plain(book.project.name)}, {_plain(book.scope)}&R{table.name}")
    sheet.set_footer(f"&LRevision {_plain(book.revision)}, {book.day.isoformat()}&R&P of &N")
    if table.rows:
        sheet.autofilter(0, 0, len(table.rows), len(table.columns) - 1)
    if table.name == OPEN:
        sheet.activate()


def _plain(text: str) -> str:
    """Text in a header or footer: & begins a code there; a header holds 255 signs."""
    return text.replace("&", "&&")[:80]


def _fill(sheet: Any, table: Table, formats: _Formats) -> None:
    for place, column in enumerate(table.columns):
        sheet.set_column(place, place, column.width)
        sheet.write_string(0, place, guarded(column.title), formats.head)
        for row, cells in enumerate(table.rows, start=1):
            cell = cells[place]
            if isinstance(cell, str):
                sheet.write_string(row, place, guarded(cell), formats.text)
            elif cell is not None:
                sheet.write_number(row, place, cell, formats.number(cell, column.decimals))
