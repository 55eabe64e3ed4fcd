"""Lists for spreadsheets: nothing in them is computed, and what was guarded comes back.

The hostile cells are examples of OWASP's page on CSV injection and of Excel's own formula starts.
"""

import csv
import io
from typing import Any

import openpyxl
import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.documents.cells import FORMULA_STARTS, guarded, unguarded
from app.documents.takeoff_list import takeoff_csv, takeoff_workbook

HOSTILE = ["=1+1", "+1", "-1'-6\"", "@SUM(A1)", "\t=1", "\r=1", "=cmd|' /C calc'!A0", "'quoted"]


def _line(item: str) -> dict[str, Any]:
    return {"item": item, "kind": "stretcher", "net": 5929, "overage": 297, "order": 6250, "unit": "each"}


@given(st.text())
def test_a_guarded_cell_is_no_formula_and_comes_back(text: str) -> None:
    assert not guarded(text).startswith(FORMULA_STARTS)
    assert unguarded(guarded(text)) == text


def test_a_length_below_zero_comes_back() -> None:
    assert unguarded(guarded("-1'-6\"")) == "-1'-6\""


@pytest.mark.parametrize("item", HOSTILE)
def test_csv_holds_no_formula(item: str) -> None:
    head, row = csv.reader(io.StringIO(takeoff_csv([_line(item)]), newline=""))
    assert head == ["Item", "Kind", "Net", "Overage", "Order", "Unit"]
    assert unguarded(row[0]) == item
    assert not row[0].startswith(FORMULA_STARTS)


@pytest.mark.parametrize("item", [item for item in HOSTILE if "\r" not in item])
def test_the_workbook_holds_text_and_numbers(item: str) -> None:
    book = openpyxl.load_workbook(io.BytesIO(takeoff_workbook([_line(item)], "Yard & Co")))
    cells = next(iter(book.active.iter_rows(min_row=2)))
    assert [cell.data_type for cell in cells] == ["s", "s", "n", "n", "n", "s"]
    assert unguarded(cells[0].value) == item
    assert [cell.value for cell in cells[2:5]] == [5929, 297, 6250]


def test_no_lines_give_the_head_alone() -> None:
    assert takeoff_csv([]).splitlines() == ["Item,Kind,Net,Overage,Order,Unit"]
