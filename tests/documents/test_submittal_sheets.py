"""The cuts of liner sheets as a crew reads them."""

from shapes import example, rectangle

from app.brickwork.layout import lay_out
from app.documents.submittal_sheets import sheet_cut_rows
from app.liner.sheets import sheet_plan
from app.panel.project import Liner


def test_every_cut_sheet_stands_in_one_row_and_no_whole_one_does() -> None:
    plan = sheet_plan(lay_out(example("window")), Liner())
    rows = sheet_cut_rows(plan, "in")
    named = [mark for row in rows for mark in row["sheets"].split(", ")]
    assert sorted(named, key=int) == [sheet.mark for sheet in plan.sheets if sheet.is_trimmed]
    assert all(row["cuts"] for row in rows)


def test_a_panel_as_wide_as_a_sheet_is_cut_at_the_top_alone() -> None:
    """A sheet of 6 x 9 modular cells in stack bond is 48 x 24 in.; 20 in. of panel leaves one cut."""
    layout = lay_out(rectangle(48, 20, bond="stack"))
    assert sheet_cut_rows(sheet_plan(layout, Liner()), "in") == [{"sheets": "1", "cuts": "from the foot 1'-8\""}]
