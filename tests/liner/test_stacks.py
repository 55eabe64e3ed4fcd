"""Stacks of equal trims: every trim in exactly one, and equal ones in the same."""

import numpy as np
import pytest
import shapely
from hypothesis import HealthCheck, given, settings
from random_panels import Document, panels
from shapes import case, rectangle

from app.brickwork.layout import Layout, lay_out
from app.documents.project_file import read_panel
from app.liner.sheets import sheet_plan
from app.liner.stacks import letters, stacks
from app.liner.trims import trim_shapes
from app.liner.work_values import MOST_IN_STACK
from app.panel.project import Liner

RANDOM = settings(max_examples=30, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck))
NEAR = 1e-3


def assert_laws(layout: Layout, liner: Liner) -> None:
    plan = sheet_plan(layout, liner)
    found = stacks(layout, plan, liner)
    trimmed = [sheet.number for sheet in plan.sheets if sheet.is_trimmed]
    assert sorted(number for stack in found for number in stack.sheets) == trimmed
    assert [stack.count for stack in found] == sorted((stack.count for stack in found), reverse=True)
    assert len({stack.mark for stack in found}) == len(found)
    trims = trim_shapes(plan.sheets)
    corners = [np.array(sheet.outline)[0] for sheet in plan.sheets]
    own = [shapely.transform(trim, lambda at, by=by: at - by) for trim, by in zip(trims, corners, strict=True)]
    for stack in found:
        first = own[stack.sheets[0] - 1]
        for number in stack.sheets:
            assert own[number - 1].symmetric_difference(first).area < NEAR * first.length, "unequal trims in a stack"
        assert stack.area == pytest.approx(first.area, abs=NEAR)
    firsts = [(stack.size, stack.bond, own[stack.sheets[0] - 1]) for stack in found]
    for k, (size, bond, one) in enumerate(firsts):
        for other_size, other_bond, other in firsts[k + 1 :]:
            is_same = (size, bond) == (other_size, other_bond) and one.symmetric_difference(
                other, grid_size=1e-8
            ).area < 1e-6
            assert not is_same, "equal trims in two stacks"


@RANDOM
@given(panels())
def test_laws_hold_on_random_panels(document: Document) -> None:
    assert_laws(lay_out(read_panel(document)), Liner(columns=2, rows=3))


@pytest.mark.parametrize("name", ["b1", "b3", "door"])
def test_laws_hold_for_the_reference_cases(name: str) -> None:
    assert_laws(lay_out(case(name)), Liner())


def test_the_last_sheets_of_seven_rows_are_one_stack_cut_twice() -> None:
    """
    Stack bond, 60 x 168 in., from the face's lower left: seven rows of one full sheet and one of 12 in.; six to a pass.
    """
    layout = lay_out(rectangle(60, 168, "stack", laying={"corner": "bed lower right"}))
    (stack,) = stacks(layout, sheet_plan(layout, Liner()), Liner())
    assert (stack.mark, stack.count, stack.passes, MOST_IN_STACK) == ("A", 7, 2, 6)
    assert stack.sheets == (2, 4, 6, 8, 10, 12, 14)
    assert stack.area == pytest.approx(12 * 24)


def test_stacks_go_on_after_z() -> None:
    assert [letters(k) for k in (0, 25, 26, 51, 52, 701, 702)] == ["A", "Z", "AA", "AZ", "BA", "ZZ", "AAA"]


def test_no_trims_no_stacks() -> None:
    for panel in (rectangle(48, 24, "stack"), rectangle(20, 10, margin=5)):
        layout = lay_out(panel)
        assert stacks(layout, sheet_plan(layout, Liner()), Liner()) == ()
