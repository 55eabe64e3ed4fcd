"""Laps: each strip lies on the flange of a sheet laid before, and no seam is without one."""

from dataclasses import replace

import numpy as np
import pytest
import shapely
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from random_panels import Document, panels
from shapes import CROSSED, case, example, rectangle

from app.brickwork.bonds import BONDS
from app.brickwork.layout import Layout, lay_out
from app.documents.project_file import read_panel
from app.lengths import Length
from app.liner.laps import laps
from app.liner.sheets import sheet_plan
from app.liner.trims import trim_shapes
from app.liner.values import SheetPlan
from app.liner.work_values import Lap
from app.panel.geometry import openings_polygon
from app.panel.laying import CORNERS, DIRECTIONS, Laying
from app.panel.project import Liner
from app.panel.tolerance import TOLERANCE

RANDOM = settings(max_examples=35, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck))
NEAR = 1e-4
GRID = 1e-8
SMALL = Liner(columns=2, rows=3)
NARROW = Liner(columns=3, rows=4, lap=Length.from_inches(0.5))


def planned(layout: Layout, liner: Liner) -> tuple[SheetPlan, tuple[Lap, ...]]:
    plan = sheet_plan(layout, liner)
    return plan, laps(plan)


def strip_of(lap: Lap) -> shapely.Geometry:
    return shapely.union_all([shapely.Polygon(ring) for ring in lap.rings])


def assert_laws(layout: Layout, liner: Liner) -> None:
    plan, found = planned(layout, liner)
    trims = trim_shapes(plan.sheets)
    assert all(lap.over < lap.by for lap in found), "a sheet lies on one that is laid after it"
    assert len({(lap.over, lap.by) for lap in found}) == len(found)
    for lap in found:
        strip = strip_of(lap)
        flange = trims[lap.over - 1].buffer(plan.lap + NEAR, join_style="mitre")
        assert strip.area == pytest.approx(lap.area, abs=NEAR)
        assert strip.difference(flange, grid_size=GRID).area < NEAR, "a lap reaches past the flange"
        assert strip.difference(trims[lap.by - 1], grid_size=GRID).area < NEAR, "a lap leaves the sheet on top"
        assert strip.intersection(openings_polygon(layout.panel)).area < NEAR, "a lap lies in an opening"
        assert lap.edge == ("along" if plan.sheets[lap.over - 1].row == plan.sheets[lap.by - 1].row else "up")
    assert {(lap.over, lap.by) for lap in found} == seams_of(plan, trims)
    assert_areas(layout, plan, found)


def seams_of(plan: SheetPlan, trims: np.ndarray) -> set[tuple[int, int]]:
    """Trims of one region that share an edge: grown by a hair each, they overlap by its length times two hairs."""
    hair = 1e-3
    grown = shapely.buffer(trims, hair, join_style="mitre")
    pairs = set()
    for k, n in np.column_stack(shapely.STRtree(grown).query(grown, predicate="intersects")).tolist():
        one, two = plan.sheets[k], plan.sheets[n]
        if k < n and one.region == two.region:
            shared = grown[k].intersection(grown[n]).area / (2 * hair)
            if shared > 0.02:
                pairs.add((one.number, two.number))
    return pairs


def assert_areas(layout: Layout, plan: SheetPlan, found: tuple[Lap, ...]) -> None:
    """All that sheets are with what is left of their flanges: the brick field once, and the laps a second time."""
    total = 0.0
    for sheet, trim in zip(plan.sheets, trim_shapes(plan.sheets), strict=True):
        own = [lap for lap in found if lap.over == sheet.number]
        cut = shapely.union_all([trim, *map(strip_of, own)], grid_size=TOLERANCE).area
        assert cut == pytest.approx(sheet.area + sum(lap.area for lap in own), abs=1e-3)
        total += cut
    assert total == pytest.approx(
        layout.field.area - sum(strip.area for strip in plan.strips) + sum(lap.area for lap in found), abs=1e-2
    )


@pytest.mark.parametrize("bond", BONDS)
def test_laws_hold_for_every_bond(bond: str) -> None:
    for shape in CROSSED[:3]:
        assert_laws(lay_out(example(shape, "modular", bond)), SMALL)


@RANDOM
@given(panels(), st.sampled_from([SMALL, NARROW]), st.sampled_from(CORNERS), st.sampled_from(DIRECTIONS))
def test_laws_hold_on_random_panels(document: Document, liner: Liner, corner: str, direction: str) -> None:
    panel = replace(read_panel(document), laying=Laying(corner, direction))
    assert_laws(lay_out(panel), liner)


def test_laws_hold_where_joints_gave() -> None:
    opening = {"mark": "W1", "rect": [96 + 0.25, 80 + 0.3, 47.6, 53.2]}
    fitted = rectangle(180, 140, openings=[opening], margin=0.375, fit={"courses": True, "heads": True})
    assert_laws(lay_out(fitted), Liner())


def test_two_stack_bond_sheets_lap_by_the_flange_over_their_whole_edge() -> None:
    """
    Two sheets of 48 x 24 in. side by side, laps of 1 in.: one strip of 24 sq in.
    """
    plan, (lap,) = planned(lay_out(rectangle(96, 24, "stack")), Liner())
    assert (lap.over, lap.by, lap.edge) == (1, 2, "along")
    assert lap.area == pytest.approx(24)
    assert strip_of(lap).bounds == pytest.approx((47, 0, 48, 24)), "on the later sheet, left of the seam on the face"
    assert plan.sheets[0].area == plan.sheets[1].area == pytest.approx(48 * 24)


def test_four_stack_bond_sheets_lap_four_times_and_not_corner_over_corner() -> None:
    _, found = planned(lay_out(rectangle(96, 48, "stack")), Liner())
    assert {(lap.over, lap.by, lap.edge) for lap in found} == {
        (1, 2, "along"), (1, 3, "up"), (2, 4, "up"), (3, 4, "along"),
    }  # fmt: skip
    assert sum(lap.area for lap in found) == pytest.approx(2 * 24 + 2 * 48)


def test_a_toothed_seam_laps_round_every_tooth() -> None:
    """
    Running bond: 9 courses of 8/3 in. and 8 teeth of 4 in. over a seam 9 x 8/3 + 8 x 4 = 56 in. long; a strip of 1 in.
    loses a square inch at every inside corner and wins one at every outside corner: 8 of either in 4 teeth to and fro.
    """
    _, found = planned(lay_out(rectangle(104, 24)), Liner())
    lap = next(lap for lap in found if (lap.over, lap.by) == (1, 2))
    assert lap.area == pytest.approx(9 * 8 / 3 + 8 * 4, abs=1e-3)


def test_liner_without_a_lap_and_an_empty_face_have_none() -> None:
    assert laps(sheet_plan(lay_out(rectangle(96, 24)), Liner(lap=Length(0)))) == ()
    assert laps(sheet_plan(lay_out(rectangle(20, 10, margin=5)), Liner())) == ()


@pytest.mark.parametrize("name", ["b1", "b3", "door"])
def test_laws_hold_for_the_reference_cases(name: str) -> None:
    assert_laws(lay_out(case(name)), Liner())
