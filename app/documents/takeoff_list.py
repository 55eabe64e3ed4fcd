"""What to order as a list: comma-separated text and a workbook, from the same lines as the project's JSON."""

import csv
import io
from collections.abc import Mapping, Sequence
from typing import Any

import xlsxwriter

from app.documents.cells import guarded

Line = Mapping[str, Any]

COLUMNS = (
    ("Item", "item"),
    ("Kind", "kind"),
    ("Net", "net"),
    ("Overage", "overage"),
    ("Order", "order"),
    ("Unit", "unit"),
)
WIDTHS = (40, 14, 12, 12, 12, 12)


def takeoff_csv(lines: Sequence[Line]) -> str:
    """Head and lines, text guarded; the head alone for no lines. RFC 4180."""
    text = io.StringIO(newline="")
    writer = csv.writer(text)
    writer.writerow(name for name, _ in COLUMNS)
    writer.writerows([_cell(line[key]) for _, key in COLUMNS] for line in lines)
    return text.getvalue()


def takeoff_workbook(lines: Sequence[Line], title: str) -> bytes:
    """One sheet with the same head and lines; text is written as text, so nothing in it is computed."""
    held = io.BytesIO()
    with xlsxwriter.Workbook(held, {"in_memory": True, "strings_to_formulas": False}) as book:
        strong = book.add_format({"bold": True, "bottom": 1})
        sheet = book.add_worksheet("Order")
        sheet.set_header(f"&L{title.replace('&', '&&')}")
        sheet.freeze_panes(1, 0)
        for column, ((name, key), width) in enumerate(zip(COLUMNS, WIDTHS, strict=True)):
            sheet.set_column(column, column, width)
            sheet.write_string(0, column, name, strong)
            for row, line in enumerate(lines, start=1):
                _write(sheet, row, column, line[key])
    return held.getvalue()


def _cell(value: Any) -> Any:
    return guarded(value) if isinstance(value, str) else value


def _write(sheet: Any, row: int, column: int, value: Any) -> None:
    if isinstance(value, str):
        sheet.write_string(row, column, guarded(value))
    elif value is not None:
        sheet.write_number(row, column, value)
