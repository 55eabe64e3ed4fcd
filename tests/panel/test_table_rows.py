"""A table of a panel's things reads back as the same things, and says where a cell is wrong."""

import pytest
from panels import FULL

from app.brickwork.bonds import BONDS
from app.brickwork.sizes import CATALOGUE
from app.lengths import parse
from app.panel.edits import edit_from
from app.panel.faults import Refused
from app.panel.table_rows import written
from app.panel.table_text import read_table, write_table
from app.panel.values import Panel


def put(panel: Panel, table: str, unit: str = "in") -> Panel:
    return edit_from("put_table", {"table": table}, unit, CATALOGUE, BONDS).apply(panel, unit)


def told(table: str) -> list[tuple[str, str]]:
    with pytest.raises(Refused) as refused:
        put(FULL, table)
    return [(fault.path, fault.found) for fault in refused.value.faults]


def test_a_table_copied_out_comes_back_as_the_same_things() -> None:
    again = put(FULL, write_table(written(FULL, "in")))
    assert (again.openings, again.zones, again.plates, again.strips, again.fixings) == (
        FULL.openings,
        FULL.zones,
        FULL.plates,
        FULL.strips,
        FULL.fixings,
    )


def test_rows_of_known_marks_change_and_others_are_added_in_one_step() -> None:
    table = "Mark\tUse\tLeft\tFoot\tWidth\tHeight\nW1\twindow\t5'\t8'\t4'\t5'-4\"\n\twindow\t10\t10\t24\t30\n"
    after = put(FULL, table)
    shape = next(one.shape for one in after.openings if one.mark == "W1")
    assert (shape.x, shape.y) == (parse("5'", "in"), parse("8'", "in"))
    assert len(after.openings) == len(FULL.openings) + 1
    assert edit_from("put_table", {"table": table}, "in").label(FULL) == "From a table: set 1, add 1"


def test_what_the_table_does_not_hold_stays() -> None:
    after = put(FULL, "opening\tW1\twindow\trect\t62\t96\t48\t64")
    assert len(after.openings) == len(FULL.openings)
    sides = [next(one.sides for one in panel.openings if one.mark == "W1") for panel in (FULL, after)]
    assert sides[0] == sides[1]


def test_every_kind_is_read_without_heads() -> None:
    rows = (
        "opening\tV9\tvent\tcircle\t320\t40\t\t\t9",
        "opening\tL9\tlouver\tpolygon\t\t\t\t\t10,10; 30,10; 30,30",
        "zone\tZ9\tstack\trect\t100\t20\t40\t16",
        "zone\tB9\tsoldier\tband\t\t\t\t\t30, 1",
        "plate\tP9\t\trect\t300\t60\t8\t8",
        "strip\tR9\t\tline\t\t\t1\t\t0,330; 360,330",
        "fixing\t\ttape\tline\t\t\t\t\t20,0; 20,300",
    )
    after = edit_from("put_table", {"table": "\r\n".join(rows)}, "in", CATALOGUE, BONDS).changed(FULL)
    assert [one.mark for one in after.openings[-2:]] == ["V9", "L9"]
    assert [one.mark for one in after.zones[-2:]] == ["Z9", "B9"]
    assert after.plates[-1].mark == "P9"
    assert after.strips[-1].mark == "R9"
    assert after.fixings[-1].by == "tape"


def test_quoted_cells_and_guarded_lengths_are_read_as_they_were_meant() -> None:
    [row] = read_table('"opening"\t"W""1"\twindow\trect\t\'-1\'-6"\t0\t12\t12')
    assert (row["mark"], row["x"]) == ('W"1', "-1'-6\"")


@pytest.mark.parametrize(
    ("table", "path", "found"),
    [
        ("", "table", "0 rows"),
        ("opening\tW1\t\trect\t1\t2\t3\tx", "table", "row 1, height: 'x', x at character 1"),
        ("roof\tW1", "table", "row 1, kind: 'roof'"),
        ("opening\tW1\t\tblob", "table", "row 1, shape: 'blob'"),
        ("mark\twidth\tdepth\nW1\t4\t5", "table", "head 'depth'"),
        ("mark\twidth\twidth\nW1\t4\t5", "table", "head width"),
        ("opening\tA\tb\trect\t1\t2\t3\t4\t\tmore", "table", "row 1: 10 cells, the last 'more'"),
        ("zone\tZ1\tnone\trect\t1\t2\t3\t4", "table", "row 1, use: 'none'"),
        ("fixing\t9\tglue\tline\t\t\t\t\t0,0; 9,9", "mark", "9"),
        ("\n".join(["opening\t\t\trect\t1\t2\t3\t4"] * 501), "table", "501 rows"),
    ],
)
def test_what_cannot_be_read_is_told_by_row_and_column(table: str, path: str, found: str) -> None:
    assert (path, found) in told(table)


def test_millimetres_are_read_in_a_metric_project() -> None:
    after = put(FULL, "opening\tW1\twindow\trect\t1500\t2400\t1200\t1600", "mm")
    shape = next(one.shape for one in after.openings if one.mark == "W1")
    assert shape.width == parse("1200 mm", "in")
