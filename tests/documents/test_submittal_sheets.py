"""The cuts of liner sheets as a crew reads them."""

import re

from shapes import example, rectangle

from app.brickwork.layout import Layout, lay_out
from app.documents.submittal_sheets import Row, sheet_cut_rows
from app.liner.offcuts import cutting_plan
from app.liner.sheets import sheet_plan
from app.liner.stacks import cut_list
from app.liner.told_lines import MOST_TOLD
from app.panel.project import Liner


def rows_of(layout: Layout) -> list[Row]:
    plan = sheet_plan(layout, Liner())
    return sheet_cut_rows(cut_list(layout, plan, cutting_plan(layout, plan, Liner()), Liner()).stacks, "in")


def test_every_cut_sheet_stands_in_one_row_and_no_whole_one_does() -> None:
    layout = lay_out(example("window"))
    rows = rows_of(layout)
    named = [int(number) for row in rows for number in re.findall(r"\d+", row["sheets"])]
    assert sorted(named) == [sheet.number for sheet in sheet_plan(layout, Liner()).sheets if sheet.is_trimmed]
    assert all(row["cuts"] for row in rows)


def test_a_panel_as_wide_as_a_sheet_is_cut_at_the_top_alone() -> None:
    """
    A sheet of 6 x 9 modular cells in stack bond is 48 x 24 in.; 20 in. of panel leaves one cut, 1-3/4 in. past seven
    courses of 8/3 in., whose last bed joint is 5/12 in. From the face's lower right a sheet has a joint at its start
    and at its end: it crosses six.
    """
    layout = lay_out(rectangle(48, 20, bond="stack"))
    assert rows_of(layout) == [
        {"stack": "A, one sheet", "sheets": "1", "cuts": '7 courses + 1 3/4" up, 6 ridges across'}
    ]


def test_of_many_cuts_the_longest_are_told_and_the_rest_are_counted() -> None:
    """Each side of a sheet with a hundred teeth and arcs would fill pages: a row stays lower than one."""
    told = [row["cuts"].split("; ") for row in rows_of(lay_out(example("herringbone panel")))]
    many = [cuts for cuts in told if cuts[-1].startswith("and ")]
    assert many
    assert all(len(cuts) <= MOST_TOLD + 1 for cuts in told)
    assert all(re.fullmatch(r"and (a|\d+) shorter ones?: follow the line", cuts[-1]) for cuts in many)
