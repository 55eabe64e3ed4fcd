"""Stacks of unpacked sheets that are cut alike: each sheet to unpack in one of them or whole, and cuts that free the
pieces and nothing else."""

from itertools import combinations

import numpy as np
import pytest
import shapely
from hypothesis import HealthCheck, given, settings
from offcut_checker import area_of, shape_of
from random_panels import Document, panels
from shapes import case, rectangle
from yard import PANELS, panel_of

from app.brickwork.layout import Layout, lay_out
from app.brickwork.turning import turned_points
from app.documents.project_file import read_panel
from app.liner.mould import mould
from app.liner.offcut_values import CuttingPlan, Taken
from app.liner.offcuts import cutting_plan
from app.liner.sheets import sheet_plan
from app.liner.stacks import cut_list, letters
from app.liner.values import SheetPlan
from app.liner.work_values import MOST_IN_STACK, CutList, Stack
from app.panel.project import Liner

RANDOM = settings(max_examples=15, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck))
NEAR = 1e-3


def found_for(layout: Layout, liner: Liner) -> tuple[SheetPlan, CuttingPlan, CutList]:
    plan = sheet_plan(layout, liner)
    cutting = cutting_plan(layout, plan, liner)
    return plan, cutting, cut_list(layout, plan, cutting, liner)


def assert_laws(layout: Layout, cutting: CuttingPlan, found: CutList, liner: Liner) -> None:
    assert found.used == sum(stack.count for stack in found.stacks) + len(found.whole) == cutting.used
    laid = sorted([*found.whole, *(number for stack in found.stacks for number in stack.sheets)])
    assert laid == sorted(taken.number for sheet in cutting.sheets for taken in sheet.taken), "each sheet is laid once"
    assert [stack.count for stack in found.stacks] == sorted((s.count for s in found.stacks), reverse=True)
    assert len({stack.mark for stack in found.stacks}) == len(found.stacks)
    assert_grouped(cutting, found)
    for stack in found.stacks:
        assert_pieces(layout, cutting, stack, liner)
        assert_cuts(stack)


def assert_grouped(cutting: CuttingPlan, found: CutList) -> None:
    """Sheets of a stack are cut alike in their mould's own frame, and no two stacks are."""
    cut = {sheet.owner: sheet for sheet in cutting.sheets}
    for stack in found.stacks:
        first = cut[stack.owners[0]]
        for owner in stack.owners[1:]:
            assert (cut[owner].size, cut[owner].bond) == (first.size, first.bond)
            assert is_alike(cut[owner].taken, first.taken), "sheets of a stack are cut in two ways"
    for one, two in combinations([cut[stack.owners[0]] for stack in found.stacks], 2):
        is_same = (one.size, one.bond, len(one.taken)) == (two.size, two.bond, len(two.taken))
        assert not (is_same and is_alike(one.taken, two.taken)), "sheets that are cut alike are in two stacks"


def is_alike(one: tuple[Taken, ...], two: tuple[Taken, ...]) -> bool:
    """Whether every trim of the one lies over a trim of the other; most are told apart by their areas."""
    if not np.allclose(sorted(t.area for t in one), sorted(t.area for t in two), atol=1e-3):
        return False
    left = [shape_of(taken.rings) for taken in two]
    for taken in one:
        shape = shape_of(taken.rings)
        same = [k for k, other in enumerate(left) if area_of(shapely.symmetric_difference, shape, other) < NEAR]
        if not same:
            return False
        left.pop(same[0])
    return True


def assert_pieces(layout: Layout, cutting: CuttingPlan, stack: Stack, liner: Liner) -> None:
    """Each piece is its trims of the cutting plan, from the starting corner."""
    region = next(r for r in layout.regions if (r.size.name, r.bond.name) == (stack.size, stack.bond))
    shape = mould(region.bond, region.size, liner.columns, liner.rows)
    corner = layout.panel.laying.corner
    away = (-1 if corner.endswith("left") else 1, 1 if "lower" in corner else -1)
    start = (turned_points(shape.outline, shape.turn) * away).min(axis=0)
    sheets = {taken.number: sheet.owner for sheet in cutting.sheets for taken in sheet.taken}
    for piece in stack.pieces:
        assert [sheets[number] for number in piece.numbers] == list(stack.owners), "one of every unpacked sheet"
        own = shape_of(piece.rings)
        assert piece.area == pytest.approx(own.area, abs=NEAR)
        for number in piece.numbers[:2]:
            taken = shape_of(cutting.taken(number).rings)
            moved = shapely.transform(taken, lambda at: turned_points(at, shape.turn) * away - start)
            assert area_of(shapely.symmetric_difference, moved, own) < NEAR * max(1.0, own.length)


def assert_cuts(stack: Stack) -> None:
    """All sides of pieces are cut or the sheet's own edge, no cut enters a piece, and none lies on another."""
    outline = shapely.Polygon(stack.outline)
    lines = [shapely.LineString([knife.cut.start, knife.cut.end]) for knife in stack.cuts]
    pieces = [shape_of(piece.rings) for piece in stack.pieces]
    open_sides = shapely.union_all([shapely.boundary(piece) for piece in pieces]).difference(
        shapely.union_all([*lines, outline.boundary]).buffer(2 * NEAR)
    )
    assert open_sides.length < NEAR, "a piece is not cut free"
    inner = [piece.buffer(-2 * NEAR, join_style="mitre") for piece in pieces]
    assert not any(line.intersects(piece) for line in lines for piece in inner), "a cut goes into a piece"
    bands = [line.buffer(NEAR, cap_style="flat") for line in lines]
    for one, two in combinations(bands, 2):
        assert one.intersection(two).length < 0.2, "a line is cut twice"
    assert_order(lines, outline)


def assert_order(lines: list[shapely.LineString], outline: shapely.Polygon) -> None:
    """Nobody has to cut to a point within a sheet as long as a cut from edge to edge of what is left is to be made."""
    edges = outline.boundary
    for k, line in enumerate(lines):
        if not is_through(line, edges, 5 * NEAR):
            assert not any(is_through(later, edges, NEAR) for later in lines[k + 1 :])
        edges = shapely.union_all([edges, line])


def is_through(line: shapely.LineString, edges: shapely.Geometry, near: float) -> bool:
    return all(edges.distance(end) < near for end in shapely.points(line.coords))


@RANDOM
@given(panels())
def test_laws_hold_on_random_panels(document: Document) -> None:
    layout, liner = lay_out(read_panel(document)), Liner(columns=2, rows=3)
    _, cutting, found = found_for(layout, liner)
    assert_laws(layout, cutting, found, liner)


@pytest.mark.parametrize("mark", PANELS)
def test_laws_hold_for_the_yard(mark: str) -> None:
    """Stacks and whole sheets are all sheets to unpack, for every panel of the yard."""
    done = panel_of(mark)
    assert_laws(done.layout, done.cutting, done.sheet_work.cut_list, done.given.liner)


def test_laws_hold_for_the_door() -> None:
    layout = lay_out(case("door"))
    _, cutting, found = found_for(layout, Liner())
    assert_laws(layout, cutting, found, Liner())


def test_the_last_sheets_of_seven_rows_come_out_of_three_sheets() -> None:
    """
    Stack bond, 60 x 168 in.: seven rows of one full sheet and one of 12 in. Moved by whole bricks of 8 in. three of
    them fit into 48 in., so that two sheets are cut alike at 12, 16, 28, 32 and 44 in. and a third gives one.
    """
    layout = lay_out(rectangle(60, 168, "stack", laying={"corner": "bed lower right"}))
    _, cutting, found = found_for(layout, Liner())
    assert cutting.used == 10
    assert [(stack.mark, stack.count, len(stack.pieces)) for stack in found.stacks] == [("A", 2, 3), ("B", 1, 1)]
    assert len(found.whole) == 7
    first = found.stacks[0]
    assert {knife.cut.axis for knife in first.cuts} == {"x"}
    assert sorted(knife.cut.at for knife in first.cuts) == pytest.approx([12, 16, 28, 32, 44])
    assert (first.passes, MOST_IN_STACK) == (1, 6)


def test_two_pieces_that_meet_are_parted_by_one_cut() -> None:
    """72 x 48 in.: two rows of a full sheet and a half one; both halves out of one sheet, which is cut once."""
    layout = lay_out(rectangle(72, 48, "stack", laying={"corner": "bed lower right"}))
    _, _, found = found_for(layout, Liner())
    (stack,) = found.stacks
    (knife,) = stack.cuts
    assert (knife.cut.axis, knife.cut.at) == ("x", pytest.approx(24))
    assert stack.sheets == (2, 4)
    assert found.whole == (1, 3)


def test_a_cut_runs_on_past_the_teeth_of_a_sheet() -> None:
    """Running bond: four teeth of 4 in. stand over the side of a sheet; all are cut off along one line."""
    layout = lay_out(rectangle(52 - 4, 24, laying={"corner": "bed lower right"}))
    _, _, found = found_for(layout, Liner())
    lines = [knife.cut for stack in found.stacks for knife in stack.cuts if knife.cut.axis == "x"]
    assert len(lines) == len({round(cut.at, 3) for cut in lines})


def test_stacks_go_on_after_z() -> None:
    assert [letters(k) for k in (0, 25, 26, 51, 52, 701, 702)] == ["A", "Z", "AA", "AZ", "BA", "ZZ", "AAA"]


def test_no_trims_no_stacks() -> None:
    for panel, whole in ((rectangle(48, 24, "stack"), (1,)), (rectangle(20, 10, margin=5), ())):
        _, _, found = found_for(lay_out(panel), Liner())
        assert (found.stacks, found.whole) == ((), whole)
