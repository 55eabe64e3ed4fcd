"""Liner sheets: they cover the brick once, lie on the lattice, and each lies over sheets laid before it."""

from dataclasses import replace
from functools import reduce
from math import hypot

import numpy as np
import pytest
import shapely
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from laws import brick_outlines
from random_panels import Document, panels
from shapes import CROSSED, SHAPES, case, example, rectangle

from app.brickwork.bonds import BONDS
from app.brickwork.lattice import lattice
from app.brickwork.layout import Layout, lay_out
from app.brickwork.sizes import CATALOGUE
from app.brickwork.turning import turned_points
from app.documents.project_file import read_panel
from app.lengths import Length
from app.liner.sheets import sheet_plan
from app.liner.values import Sheet, SheetPlan
from app.panel.geometry import openings_polygon
from app.panel.laying import CORNERS, DIRECTIONS, Laying
from app.panel.project import Liner
from app.panel.values import Panel

RANDOM = settings(max_examples=120, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck))
NEAR = 1e-5
GRID = 1e-8
"""Inches; coarser than float round-off, on which plain set operations of nearly equal slants can fail."""
SMALL = Liner(columns=2, rows=3)


def laid(panel: Panel, corner: str = CORNERS[0], direction: str = DIRECTIONS[0]) -> Panel:
    return replace(panel, laying=Laying(corner, direction))


def trim_of(sheet: Sheet) -> shapely.Geometry:
    """Inside an odd number of rings, so that what lies in a hole of another part counts."""
    return reduce(shapely.symmetric_difference, [shapely.Polygon(ring) for ring in (*sheet.trim, *sheet.holes)])


def assert_laws(layout: Layout, plan: SheetPlan) -> None:
    trims = np.array([trim_of(sheet) for sheet in plan.sheets], dtype=object)
    full = np.array([shapely.Polygon(sheet.outline) for sheet in plan.sheets], dtype=object)
    assert_brick_covered_once(layout, plan, trims)
    assert_sheets_on_the_lattice(layout, plan)
    assert_laid_over_earlier_sheets(plan, full)
    assert shapely.area(shapely.difference(trims, full, grid_size=GRID)).max(initial=0) < NEAR, (
        "a trim leaves its sheet"
    )
    assert_same_area_as_said(plan, trims, full)


def assert_brick_covered_once(layout: Layout, plan: SheetPlan, trims: np.ndarray) -> None:
    covered = shapely.union_all(trims, grid_size=GRID)
    field = layout.field.area
    assert covered.area == pytest.approx(shapely.area(trims).sum(), abs=NEAR), "trims overlap"
    assert shapely.difference(covered, layout.field, grid_size=GRID).area < NEAR, "a trim leaves the brick field"
    strips = sum(strip.area for strip in plan.strips)
    assert covered.area + strips == pytest.approx(field, rel=1e-6, abs=NEAR)
    bricks = brick_outlines(layout)
    bare = shapely.area(shapely.difference(bricks, covered, grid_size=GRID))
    assert bare.max(initial=0) < NEAR, "a brick has no sheet under it"
    tree = shapely.STRtree(bricks)
    for trim in trims:
        near = bricks[tree.query(trim, predicate="intersects")]
        assert shapely.area(shapely.intersection(near, trim, grid_size=GRID)).max(initial=0) > NEAR, (
            "a sheet holds no brick"
        )


def assert_sheets_on_the_lattice(layout: Layout, plan: SheetPlan) -> None:
    """The bond's vectors straight from its data, turned by hand; every sheet is the first one moved by whole steps."""
    for region in layout.regions:
        same = [np.array(sheet.outline) for sheet in plan.sheets if sheet.region == region.mark]
        bond = region.bond
        lat = lattice(bond, region.size, region.origin)
        vectors = turned_points(np.array([lat.across, lat.up]), bond.turn)
        for outline in same:
            moved = outline - same[0]
            assert np.ptp(moved, axis=0).max() < NEAR, "sheets differ in shape"
            steps = np.linalg.solve(vectors.T, moved[0])
            assert np.abs(steps - np.round(steps)).max() < NEAR, "a sheet is off the lattice"


def assert_laid_over_earlier_sheets(plan: SheetPlan, full: np.ndarray) -> None:
    """Of two neighbours the one further from the starting corner is laid later, over the other's lap."""
    assert [sheet.number for sheet in plan.sheets] == list(range(1, len(plan.sheets) + 1))
    for region in {sheet.region for sheet in plan.sheets}:
        own = [k for k, sheet in enumerate(plan.sheets) if sheet.region == region]
        one, two = shapely.STRtree(full[own]).query(full[own], predicate="intersects")
        for a, b in zip(one.tolist(), two.tolist(), strict=True):
            first, second = plan.sheets[own[a]], plan.sheets[own[b]]
            assert a == b or shapely.intersection(full[own[a]], full[own[b]], grid_size=GRID).area < NEAR, (
                "full sheets overlap"
            )
            if (first.row, first.column) < (second.row, second.column) and has_seam(full[own[a]], full[own[b]]):
                assert first.number < second.number, "a sheet lies on one that is laid after it"
                assert second.row - first.row <= 1, "a sheet lies on a sheet two rows before it"
        assert min(plan.sheets[k].row for k in own) == 0
        assert min(plan.sheets[k].column for k in own) == 0


def has_seam(one: shapely.Geometry, two: shapely.Geometry) -> bool:
    return bool(shapely.length(shapely.intersection(one, two, grid_size=GRID)) > 0.01)


def assert_same_area_as_said(plan: SheetPlan, trims: np.ndarray, full: np.ndarray) -> None:
    said = np.array([sheet.area for sheet in plan.sheets])
    assert np.allclose(said, shapely.area(trims), atol=NEAR)
    lost = shapely.area(full) - shapely.area(trims)
    assert all(sheet.is_trimmed for sheet, area in zip(plan.sheets, lost, strict=True) if area > NEAR)
    assert not any(sheet.is_trimmed for sheet, area in zip(plan.sheets, lost, strict=True) if area < NEAR / 100)
    assert plan.placed == len(plan.sheets) == sum(kind.placed for kind in plan.types)


@pytest.mark.parametrize("shape", CROSSED)
@pytest.mark.parametrize("bond", BONDS)
def test_laws_hold_for_every_bond_and_shape(bond: str, shape: str) -> None:
    layout = lay_out(example(shape, "modular", bond))
    assert_laws(layout, sheet_plan(layout, SMALL))


@pytest.mark.parametrize("bond", BONDS)
@pytest.mark.parametrize("size", CATALOGUE)
def test_laws_hold_for_every_bond_and_size(bond: str, size: str) -> None:
    layout = lay_out(example("window", size, bond))
    assert_laws(layout, sheet_plan(layout, Liner(columns=3, rows=5)))


@RANDOM
@given(panels(), st.integers(1, 6), st.integers(1, 9), st.sampled_from(CORNERS), st.sampled_from(DIRECTIONS))
def test_laws_hold_on_random_panels(document: Document, columns: int, rows: int, corner: str, direction: str) -> None:
    layout = lay_out(laid(read_panel(document), corner, direction))
    assert_laws(layout, sheet_plan(layout, Liner(columns=columns, rows=rows)))


@pytest.mark.parametrize("corner", CORNERS)
@pytest.mark.parametrize("bond", BONDS)
def test_columns_go_up_in_an_order_that_can_be_laid_in_every_bond(bond: str, corner: str) -> None:
    layout = lay_out(laid(rectangle(70, 60, bond), corner, "up"))
    plan = sheet_plan(layout, SMALL)
    assert_laid_over_earlier_sheets(plan, np.array([shapely.Polygon(sheet.outline) for sheet in plan.sheets]))


@pytest.mark.parametrize("name", ["b1", "b3", "door"])
def test_laws_hold_for_the_reference_cases(name: str) -> None:
    layout = lay_out(case(name))
    assert_laws(layout, sheet_plan(layout, Liner()))


@pytest.mark.parametrize("shape", SHAPES)
def test_no_sheet_lies_wholly_in_an_opening(shape: str) -> None:
    layout = lay_out(example(shape))
    openings = openings_polygon(layout.panel)
    for sheet in sheet_plan(layout, Liner(columns=1, rows=1)).sheets:
        assert not openings.covers(shapely.Polygon(sheet.outline))


def test_a_face_of_one_sheet_takes_one_full_sheet() -> None:
    """
    6 stretchers of 8 in. and 9 courses of 8/3 in.: 48 x 24 in.
    """
    plan = sheet_plan(lay_out(rectangle(48, 24, "stack")), Liner())
    assert (plan.placed, plan.bare) == (1, 0)
    (sheet,) = plan.sheets
    assert not sheet.is_trimmed
    assert sheet.cuts == ()
    assert sheet.area == pytest.approx(48 * 24)
    assert shapely.Polygon(sheet.outline).bounds == pytest.approx((0, 0, 48, 24))


def test_running_bond_sheets_are_toothed_by_half_a_head_module_each_course() -> None:
    """
    +---------------+
    |   8/3 in.     |__ 4 in.
    +-4 in.-+          |
    """
    outline = np.array(sheet_plan(lay_out(rectangle(48, 24)), Liner()).sheets[0].outline)
    assert len(outline) == 4 * 9
    assert sorted(set(np.round(outline[:, 0] - outline[:, 0].min(), 6))) == [0, 4, 48, 52]


def test_next_row_of_running_bond_sheets_is_half_a_head_module_off() -> None:
    plan = sheet_plan(lay_out(rectangle(96, 72)), Liner())
    first = {(sheet.column, sheet.row): sheet.outline[0] for sheet in plan.sheets}
    across = np.subtract(first[1, 0], first[0, 0])
    up = np.subtract(first[0, 1], first[0, 0])
    assert np.abs(across) == pytest.approx([6 * 8, 0])
    assert np.abs(up) == pytest.approx([4, 9 * 8 / 3])
    assert np.subtract(first[0, 2], first[0, 0]) == pytest.approx([0, 18 * 8 / 3]), "no creep along the edge"


def test_sheets_are_laid_row_by_row_from_the_beds_lower_left_which_is_the_faces_lower_right() -> None:
    plan = sheet_plan(lay_out(rectangle(96, 48, "stack")), Liner())
    middles = [shapely.Polygon(sheet.outline).centroid.coords[0] for sheet in plan.sheets]
    assert np.array(middles) == pytest.approx(np.array([(72, 12), (24, 12), (72, 36), (24, 36)]))


@pytest.mark.parametrize(
    ("corner", "first"),
    [
        ("bed lower left", (72, 12)),
        ("bed lower right", (24, 12)),
        ("bed upper left", (72, 36)),
        ("bed upper right", (24, 36)),
    ],
)
def test_laying_starts_at_the_corner_asked_for(corner: str, first: tuple[float, float]) -> None:
    plan = sheet_plan(lay_out(laid(rectangle(96, 48, "stack"), corner)), Liner())
    assert shapely.Polygon(plan.sheets[0].outline).centroid.coords[0] == pytest.approx(first)


def test_columns_of_stack_bond_go_up_one_after_the_other() -> None:
    plan = sheet_plan(lay_out(laid(rectangle(96, 48, "stack"), direction="up")), Liner())
    middles = [shapely.Polygon(sheet.outline).centroid.coords[0] for sheet in plan.sheets]
    assert np.array(middles) == pytest.approx(np.array([(72, 12), (72, 36), (24, 12), (24, 36)]))


def test_a_staggered_column_waits_for_the_sheet_beside_it_that_it_lies_on() -> None:
    """
    Rows of running bond start half a brick to and fro: the third row's first sheet lies on two of the second row.
    """
    plan = sheet_plan(lay_out(laid(rectangle(96, 72), direction="up")), Liner())
    places = [(sheet.column, sheet.row) for sheet in plan.sheets]
    assert places[:5] == [(0, 0), (0, 1), (1, 0), (1, 1), (0, 2)]


def test_cuts_are_measured_from_the_sheets_own_starting_corner() -> None:
    """
    A 40 x 20 in. face in one 48 x 24 sheet that starts at the face's lower right: cut 40 along, 20 up.
    """
    (sheet,) = sheet_plan(lay_out(rectangle(40, 20, "stack")), Liner()).sheets
    assert {(cut.axis, round(cut.at, 6)) for cut in sheet.cuts} == {("x", 40), ("y", 20)}


def test_cuts_at_an_opening_are_its_sides() -> None:
    opening = {"mark": "W1", "rect": [10, 6, 12, 8]}
    (sheet,) = sheet_plan(lay_out(rectangle(48, 24, "stack", openings=[opening])), Liner()).sheets
    assert len(sheet.holes) == 1
    assert {(cut.axis, round(cut.at, 6)) for cut in sheet.cuts} == {("x", 26), ("x", 38), ("y", 6), ("y", 14)}


def test_a_slanted_cut_keeps_its_length() -> None:
    gable = {"mark": "G", "thickness": 7.25, "margin": 0, "outline": [[0, 0], [40, 0], [40, 6], [0, 21]]}
    layout = lay_out(read_panel({**gable, "field": {"size": "modular", "bond": "stack"}}))
    (sheet,) = sheet_plan(layout, Liner()).sheets
    slants = [cut for cut in sheet.cuts if cut.axis == "skew"]
    lengths = [hypot(cut.end[0] - cut.start[0], cut.end[1] - cut.start[1]) for cut in slants]
    assert sum(lengths) == pytest.approx(hypot(40, 15))


def test_a_soldier_band_has_sheets_of_its_own_type() -> None:
    plan = sheet_plan(lay_out(example("soldier band")), Liner())
    by_bond = {kind.bond: kind for kind in plan.types}
    assert set(by_bond) == {"running", "soldier"}
    assert sum(kind.placed for kind in plan.types) == plan.placed
    assert by_bond["soldier"].width == pytest.approx(6 * 2.625)


def test_a_trim_has_no_thread_where_the_sheets_edge_is_a_hair_past_the_fields() -> None:
    """
    Half a course of a metric brick is no whole number of nanometres: between teeth the sheet is 1e-10 in. too far out.
    """
    zone = {"mark": "Z1", "rect": [0, 0, 4, 7.5625], "size": "australian 230x76", "bond": "common-5-flemish"}
    gable = {"mark": "G", "thickness": 7.25, "outline": [[0, 0], [24, 0], [24, 4], [0, 22]], "zones": [zone]}
    layout = lay_out(read_panel({**gable, "field": {"size": "australian 230x76", "bond": "basket-weave"}}))
    for sheet in sheet_plan(layout, Liner(columns=3, rows=5)).sheets:
        for ring in sheet.trim:
            sides = np.subtract(ring, np.roll(ring, 1, axis=0))
            assert np.hypot(*sides.T).min() > 1e-6


def test_a_joint_without_brick_takes_no_sheet_but_the_flange_of_the_last() -> None:
    """A face 1/8 in. wider than one sheet: no brick fits there, and a flange of 1 in. reaches it."""
    layout = lay_out(laid(rectangle(48.125, 24, "stack"), "bed lower right"))
    plan = sheet_plan(layout, Liner())
    assert (plan.placed, plan.bare) == (1, 0)
    assert [(strip.on_flange, round(strip.area, 4)) for strip in plan.strips] == [(1, 0.125 * 24)]


def test_a_joint_without_brick_is_bare_where_the_liner_has_no_flange() -> None:
    layout = lay_out(laid(rectangle(48.125, 24, "stack"), "bed lower right"))
    plan = sheet_plan(layout, Liner(lap=Length.from_inches(0)))
    assert plan.placed == 1
    assert plan.bare == pytest.approx(0.125 * 24)


def test_an_empty_layout_has_no_sheets() -> None:
    plan = sheet_plan(lay_out(rectangle(20, 10, margin=5)), Liner())
    assert (plan.sheets, plan.placed, plan.bare) == ((), 0, 0)
