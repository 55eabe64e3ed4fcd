"""Lists for spreadsheets: nothing in them is computed, and what was guarded comes back.

The hostile cells are examples of OWASP's page on CSV injection and of Excel's own formula starts.
"""

import csv
import io
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.documents.takeoff_list import takeoff_csv
from app.panel.cells import FORMULA_STARTS, guarded, unguarded

HOSTILE = ["=1+1", "+1", "-1'-6\"", "@SUM(A1)", "\t=1", "\r=1", "=cmd|' /C calc'!A0", "'quoted"]


HEAD = (
    "Item,Kind,Net,Overage,Order,Unit,Size,Colour,Topic,Weight,Weight in,Overage because,Counted,Cartons,Pallets,Packs"
)


def _line(item: str) -> dict[str, Any]:
    line = {"item": item, "kind": "stretcher", "net": 5929, "overage": 297, "order": 6250, "unit": "each"}
    line |= {"size": "modular", "colour": item, "topic": "brick", "weight": None, "weight_unit": "lb", "reason": item}
    return line | {"note": item, "packs": [{"name": "carton", "count": 125, "holds": 50}]}


@given(st.text())
def test_a_guarded_cell_is_no_formula_and_comes_back(text: str) -> None:
    assert not guarded(text).startswith(FORMULA_STARTS)
    assert unguarded(guarded(text)) == text


def test_a_length_below_zero_comes_back() -> None:
    assert unguarded(guarded("-1'-6\"")) == "-1'-6\""


@pytest.mark.parametrize("item", HOSTILE)
def test_csv_holds_no_formula(item: str) -> None:
    head, row = csv.reader(io.StringIO(takeoff_csv([_line(item)]), newline=""))
    assert head == HEAD.split(",")
    assert unguarded(row[0]) == item
    assert not [cell for cell in row if cell.startswith(FORMULA_STARTS)]
    assert [unguarded(row[head.index(name)]) for name in ("Colour", "Overage because", "Counted")] == [item] * 3
    assert row[2:6] == ["5929", "297", "6250", "each"]
    assert row[-3:] == ["125", "", ""]


def test_no_lines_give_the_head_alone() -> None:
    assert takeoff_csv([]).splitlines() == [HEAD]


def test_lines_end_as_the_standard_says() -> None:
    """RFC 4180: CRLF behind each record, fields with a comma, a quote or a line break in quotes, quotes doubled."""
    text = takeoff_csv([_line('a "b", c')])
    assert text.endswith("\r\n")
    assert text.split("\r\n")[1].startswith('"a ""b"", c",stretcher,5929,')
