"""Hold-downs and sheets to fix: on real brick, few, and with the reason."""

from collections import Counter

import numpy as np
import shapely
from hypothesis import HealthCheck, given, settings
from laws import brick_outlines
from random_panels import Document, panels
from shapes import case, rectangle

from app.brickwork.layout import Layout, lay_out
from app.documents.project_file import read_panel
from app.liner.fixes import fixes
from app.liner.hold_downs import MOST, hold_downs
from app.liner.laps import laps
from app.liner.sheets import sheet_plan
from app.liner.trims import trim_shapes
from app.panel.project import Day, Liner

RANDOM = settings(max_examples=20, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck))
SMALL = Liner(columns=2, rows=3)


def assert_laws(layout: Layout, liner: Liner) -> None:
    plan = sheet_plan(layout, liner)
    found = hold_downs(layout, plan, laps(plan))
    assert [hold.sheet for hold in found] == [sheet.number for sheet in plan.sheets]
    trims = trim_shapes(plan.sheets)
    outlines = brick_outlines(layout)
    boxes = {tuple(np.round(outline.bounds, 5)): outline for outline in outlines}
    units = layout.units
    for hold, trim in zip(found, trims, strict=True):
        assert len(hold.units) == len(hold.points) == len(set(hold.units)) <= MOST
        for unit, point in zip(hold.units, hold.points, strict=True):
            assert trim.buffer(1e-6).contains(shapely.Point(point)), "the brick lies on another sheet"
            low = units.x[unit], units.y[unit]
            box = (*low, low[0] + units.width[unit], low[1] + units.height[unit])
            outline = boxes.get(tuple(np.round(box, 5)))
            assert outline is not None
            assert outline.contains(shapely.Point(point)), "the point is not on the brick"


@RANDOM
@given(panels())
def test_laws_hold_on_random_panels(document: Document) -> None:
    assert_laws(lay_out(read_panel(document)), SMALL)


def test_laws_hold_on_the_reference_panel_and_every_sheet_is_held() -> None:
    layout = lay_out(case("b3"))
    assert_laws(layout, Liner())
    plan = sheet_plan(layout, Liner())
    assert all(hold.units for hold in hold_downs(layout, plan, laps(plan)))


def test_a_single_full_sheet_is_held_at_its_four_corner_bricks() -> None:
    layout = lay_out(rectangle(48, 24, "stack"))
    plan = sheet_plan(layout, Liner())
    (hold,) = hold_downs(layout, plan, laps(plan))
    assert {(round(x, 3), round(y, 3)) for x, y in hold.points} == {
        (3.812, 1.125), (43.812, 1.125), (3.812, 22.458), (43.812, 22.458),
    }  # fmt: skip


def test_a_lap_is_held_by_a_brick_over_it() -> None:
    """Two sheets side by side: the later one is held at its corners and in the middle of its lap, the fifth course."""
    layout = lay_out(rectangle(96, 24, "stack"))
    plan = sheet_plan(layout, Liner())
    first, second = hold_downs(layout, plan, laps(plan))
    assert (len(first.units), len(second.units)) == (4, 5)
    assert layout.units.course[second.units[4]] == 4


STEADY = Day(70, 70)


def fixed(width: float, height: float, day: Day = STEADY) -> list[tuple[int, str, str]]:
    plan = sheet_plan(lay_out(rectangle(width, height, "stack")), Liner())
    return [(fix.sheet, fix.when, fix.reason) for fix in fixes(plan, laps(plan), Liner(), day)]


def test_sheets_with_a_free_far_edge_are_fixed_when_it_is_windy() -> None:
    """Of three by three sheets only the four that others lie over at both far edges stay by themselves."""
    reasons = {sheet: reason for sheet, _, reason in fixed(144, 72)}
    assert sorted(reasons) == [3, 6, 7, 8, 9]
    assert reasons[9] == "no later sheet lies over it"
    assert reasons[3] == "no later sheet lies over its far end"
    assert reasons[7] == "no later sheet lies over its far side"


def test_a_small_trim_says_its_share() -> None:
    """Laid from the face's right edge, where cells end: the second sheet keeps 8 of 48 in."""
    assert (2, "wind", "no later sheet lies over it; only 17% of a sheet") in fixed(56, 24)


def test_long_sheets_are_fixed_when_the_swing_is_large() -> None:
    """
    4.5e-5 a degree: 1/8 in. is used up over 55.6 in. at 50 degrees from 70 F, over 39.7 in. at 70 degrees; a sheet is
    48 in. long.
    """
    assert not [fix for fix in fixed(48, 24, Day(40, 120)) if fix[1] == "swing"]
    (swing,) = [fix for fix in fixed(48, 24, Day(40, 140)) if fix[1] == "swing"]
    assert swing == (1, "swing", '4\'-0" long; at 140 F liner moves 1/8" over ≈ 3\'-3 11/16"')


def test_nothing_is_fixed_for_the_swing_where_the_bed_stays_at_the_liners_temperature() -> None:
    assert Counter(when for _, when, _ in fixed(144, 72)) == {"wind": 5}


def test_no_sheets_nothing_to_hold() -> None:
    layout = lay_out(rectangle(20, 10, margin=5))
    plan = sheet_plan(layout, Liner())
    assert hold_downs(layout, plan, ()) == ()
    assert fixes(plan, (), Liner(), Day(0, 150)) == ()
