"""Cutting plans: trims come out of unpacked sheets by whole steps of the bond, without overlap, and by few sheets."""

import json
from collections.abc import Iterator
from pathlib import Path

import pytest
import shapely
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st
from offcut_checker import assert_cutting, fewest, trim_in_sheet, vectors
from random_panels import Document, panels
from shapes import SHAPES, case, example, rectangle

from app.brickwork.bonds import BONDS
from app.brickwork.layout import Layout, lay_out
from app.documents.project_file import read_panel, read_project
from app.liner.mould import mould
from app.liner.offcut_values import CuttingPlan
from app.liner.offcuts import cutting_plan
from app.liner.sheets import sheet_plan
from app.panel.project import Liner
from app.workflow.compute import Computed, compute

DEMO = Path(__file__).parents[2] / "demo_data"
RANDOM = settings(max_examples=30, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck))
FEW = settings(max_examples=25, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck))
SMALL = Liner(columns=3, rows=6)


def cut(layout: Layout, liner: Liner = SMALL) -> CuttingPlan:
    """The cutting plan of a layout, all laws checked."""
    plan = sheet_plan(layout, liner)
    cutting = cutting_plan(layout, plan, liner)
    assert_cutting(layout, plan, cutting, liner)
    return cutting


@RANDOM
@given(panels(), st.integers(1, 6), st.integers(1, 9))
def test_laws_hold_on_random_panels(document: Document, columns: int, rows: int) -> None:
    cut(lay_out(read_panel(document)), Liner(columns=columns, rows=rows))


@pytest.mark.parametrize("bond", BONDS)
def test_laws_hold_for_every_bond(bond: str) -> None:
    openings = [{"mark": "W1", "rect": [21.3125, 15.75, 30, 22]}, {"mark": "W2", "circle": [80, 30, 11]}]
    cut(lay_out(rectangle(117.4375, 61.3125, bond, openings=openings)))


@pytest.mark.parametrize("name", ["b1", "b3", "door", *SHAPES])
def test_laws_hold_for_the_reference_panels_and_examples(name: str) -> None:
    layout = lay_out(example(name) if name in SHAPES else case(name))
    cut(layout, Liner())


def test_the_twelve_panels_of_the_yard_are_cut_from_the_fewest_sheets_as_is_proven() -> None:
    used = naive = 0
    for done in demo("casting_yard"):
        assert_cutting(done.layout, done.plan, done.cutting, done.given.liner)
        assert done.cutting.is_proven, done.layout.panel.mark
        used, naive = used + done.cutting.used, naive + done.cutting.naive
    assert used < 0.85 * naive


def test_sheets_are_cut_as_moulded_where_joints_give_on_the_bed() -> None:
    fitted = [done for done in demo("weir_works") if any(not region.up.is_identity for region in done.layout.regions)]
    assert fitted
    for done in fitted[:3]:
        assert_cutting(done.layout, done.plan, done.cutting, done.given.liner)


def demo(name: str) -> Iterator[Computed]:
    project = read_project(json.loads((DEMO / f"{name}.json").read_text()))
    return (compute(project, wall, panel) for wall in project.walls for panel in wall.panels)


@FEW
@given(panels(zones=0), st.integers(2, 4), st.integers(3, 7))
def test_few_trims_are_cut_from_as_few_sheets_as_all_ways_tried(document: Document, columns: int, rows: int) -> None:
    layout, liner = lay_out(read_panel(document)), Liner(columns=columns, rows=rows)
    plan = sheet_plan(layout, liner)
    (region,) = layout.regions or (None,)
    trimmed = [sheet for sheet in plan.sheets if sheet.is_trimmed]
    assume(region is not None and 2 <= len(trimmed) <= 6)
    full = mould(region.bond, region.size, columns, rows)
    trims = [trim_in_sheet(sheet, region, full) for sheet in trimmed]
    least = fewest(trims, shapely.Polygon(full.outline), vectors(region.bond, region.size, full.turn))
    found = cutting_plan(layout, plan, liner)
    assert found.used == found.bound == least + len(plan.sheets) - len(trimmed)


def test_two_halves_come_out_of_one_sheet() -> None:
    """72 x 48 in. of 48 x 24 in. sheets: in each of two rows a full one and a half one."""
    found = cut(lay_out(rectangle(72, 48, "stack")), Liner())
    assert (found.naive, found.used, found.bound, found.area_bound) == (4, 3, 3, 3)


def test_one_and_a_half_bricks_of_stack_bond_take_two_of_a_sheet() -> None:
    """60 x 96 in.: four trims 12 in. wide; moved by whole bricks of 8 in. three of them fit into 48 in., not four."""
    found = cut(lay_out(rectangle(60, 96, "stack")), Liner())
    assert (found.naive, found.used, found.bound, found.area_bound) == (8, 6, 6, 5)
    assert found.is_proven
    assert found.gap == 0


def test_a_trim_is_cut_out_of_the_window_of_another() -> None:
    """The window of a 48 x 24 in. sheet is 24 x 18.5 in.; beside the sheet stands a piece 8 in. wide and 8 in. high."""
    window = {"mark": "W1", "rect": [16, 2.75, 24, 18.5]}
    gap = {"mark": "G1", "rect": [0, 8, 8, 24]}
    found = cut(lay_out(rectangle(56, 24, "stack", openings=[window, gap])), Liner())
    assert (found.naive, found.used) == (2, 1)
    (sheet,) = found.sheets
    assert sheet.is_shared
    assert len(sheet.taken[0].rings) == 2


def test_equal_trims_that_lie_elsewhere_in_their_own_sheets_say_how_far_each_is_moved() -> None:
    """Two piers 16 in. wide at the ends of a face: the one at its sheet's right, the other at its sheet's left."""
    between = {"mark": "W1", "rect": [16, -2, 64, 28]}
    found = cut(lay_out(rectangle(96, 24, "stack", openings=[between])), Liner())
    assert (found.naive, found.used) == (2, 1)
    assert [taken.steps for taken in found.sheets[0].taken] == [(0, 0), (0, 0)]


def test_the_same_panel_is_always_cut_alike() -> None:
    layout = lay_out(case("b1"))
    plan = sheet_plan(layout, Liner())
    one, two = (cutting_plan(layout, plan, Liner()) for _ in range(2))
    assert (one.sheets, one.bound) == (two.sheets, two.bound)


def test_no_branches_for_the_solver_leave_a_plan_that_holds() -> None:
    layout = lay_out(case("b1"))
    plan = sheet_plan(layout, Liner())
    found = cutting_plan(layout, plan, Liner(), nodes=0)
    assert_cutting(layout, plan, found, Liner())
    assert found.used < found.naive


def test_regions_of_one_mould_share_sheets() -> None:
    """Two soldier bands, each one row of part sheets: what the lower leaves gives the upper."""
    soldier = {"size": "modular", "bond": "soldier"}
    bands = [{"mark": f"Z{k}", "band": {"course": 3 * k, "courses": 3}, **soldier} for k in (1, 3)]
    found = cut(lay_out(rectangle(36, 48, zones=bands)), Liner())
    soldiers = [sheet for sheet in found.sheets if sheet.bond == "soldier"]
    assert sum(len(sheet.taken) for sheet in soldiers) > len(soldiers)


def test_a_panel_without_sheets_has_an_empty_plan() -> None:
    found = cut(lay_out(rectangle(20, 10, margin=5)))
    assert (found.sheets, found.used, found.bound, found.gap, found.is_proven) == ((), 0, 0, 0.0, True)


def test_many_odd_openings_are_proven_with_sheets_twice_as_long_and_high() -> None:
    """40 openings off the module: 80 shapes of trims, each of which can share a sheet with few others."""
    sides = [(30.3 + i * 83.7, 25 + j * 91.3 + 3 * i, 40.4, 50.7 + i) for i in range(10) for j in range(4)]
    openings = [{"mark": f"W{k}", "rect": list(rect)} for k, rect in enumerate(sides)]
    layout, liner = lay_out(rectangle(900, 400, openings=openings, margin=0.375)), Liner(columns=12, rows=18)
    plan = sheet_plan(layout, liner)
    found = cutting_plan(layout, plan, liner)
    assert_cutting(layout, plan, found, liner)
    assert found.is_proven
