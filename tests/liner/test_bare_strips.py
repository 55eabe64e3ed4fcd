"""No joint is left without liner: a trim beside it takes it, or a flange reaches it, or it is told to be taped."""

from dataclasses import replace
from itertools import product
from typing import Any

import numpy as np
import pytest
import shapely
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from random_panels import Document, panels

from app.brickwork.layout import Layout, lay_out
from app.brickwork.turning import turned_points
from app.documents.project_file import read_panel
from app.lengths import Length
from app.liner.bare_findings import bare_findings
from app.liner.mould import mould
from app.liner.sheets import sheet_plan
from app.liner.trims import trim_shapes
from app.liner.values import SheetPlan
from app.panel.laying import CORNERS, Laying
from app.panel.project import Liner

RANDOM = settings(max_examples=30, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck))
HAIR = 1e-5
GRID = 1e-8
SMALL = Liner(columns=3, rows=4)
ZONES = [
    {"mark": "Z1", "band": {"course": 9, "courses": 3}, "size": "modular", "bond": "soldier"},
    {"mark": "Z2", "rect": [100, 60, 40, 40], "size": "modular", "bond": "stack"},
]
NOTCH = [[0, 0], [240, 0], [240, 120], [150, 120], [150, 40], [120.0625, 40], [120.0625, 120], [0, 120]]
ROUND = [{"mark": "W1", "circle": [120, 60, 30]}]


def face(bond: str = "running", outline: list[list[float]] | None = None, **more: Any) -> Document:
    square = [[0, 0], [240, 0], [240, 120], [0, 120]]
    field = {"size": "modular", "bond": bond}
    return {"mark": "T", "thickness": 7.25, "outline": outline or square, "field": field, **more}


def planned(document: Document, corner: str, liner: Liner = SMALL) -> tuple[Layout, SheetPlan]:
    layout = lay_out(replace(read_panel(document), laying=Laying(corner, "across")))
    return layout, sheet_plan(layout, liner)


def uncovered(layout: Layout, plan: SheetPlan) -> float:
    """Of the field, what is neither on a trim nor within a lap of the trim whose flange is said to be there."""
    trims = shapely.buffer(trim_shapes(plan.sheets), HAIR, join_style="mitre")
    flanges = []
    for strip in plan.strips:
        if strip.on_flange is not None:
            reach = shapely.buffer(trims[strip.on_flange - 1], plan.lap * 2**0.5)
            flanges.append(shapely.intersection(reach, shapely.buffer(shapely.Polygon(strip.outline), HAIR)))
    return float(layout.field.difference(shapely.union_all([*trims, *flanges])).area)


def assert_laws(layout: Layout, plan: SheetPlan) -> None:
    assert uncovered(layout, plan) == pytest.approx(plan.bare, rel=1e-3, abs=1e-6 * layout.field.area + 1e-3)
    full = [shapely.Polygon(sheet.outline) for sheet in plan.sheets]
    trims = trim_shapes(plan.sheets)
    for strip in plan.strips:
        shape = shapely.Polygon(strip.outline, strip.holes)
        assert shape.difference(layout.field.buffer(HAIR)).area < HAIR
        if strip.on_flange is not None:
            assert_beyond_a_far_edge(layout, plan, strip.on_flange, shape)
            continue
        for sheet, trim in zip(full, trims, strict=True):
            part = shape.intersection(sheet, grid_size=GRID)
            touches = part.buffer(HAIR).intersection(trim.boundary).length
            assert part.area < 1e-3 or touches < 1e-2, "a sheet beside the strip lies under it, and is cut away there"


def assert_beyond_a_far_edge(layout: Layout, plan: SheetPlan, number: int, strip: shapely.Geometry) -> None:
    """The sheet moved on by shares of a lap, along, up or both, lies under all of the strip."""
    sheet = plan.sheets[number - 1]
    full = shapely.Polygon(sheet.outline).buffer(HAIR)
    assert strip.intersection(full).area < 1e-2, "what is on a flange is beyond the sheet itself"
    (region,) = [region for region in layout.regions if region.mark == sheet.region]
    turn = mould(region.bond, region.size, plan.columns, plan.rows).turn
    shares = np.array(list(product((0.0, 0.02, 0.1, 0.3, 0.6, 1.0), repeat=2))) * plan.lap * sheet.away
    moves = [shapely.transform(full, lambda points, by=by: points + by) for by in turned_points(shares, turn)]
    assert strip.difference(shapely.union_all(moves)).area < 1e-2, "no flange there: the sheet's near edge"


@RANDOM
@given(panels(), st.sampled_from([SMALL, Liner(columns=2, rows=3), Liner()]), st.sampled_from(CORNERS))
def test_trims_flanges_and_told_strips_cover_the_field_of_random_panels(
    document: Document, liner: Liner, corner: str
) -> None:
    assert_laws(*planned(document, corner, liner))


@pytest.mark.parametrize("corner", CORNERS)
@pytest.mark.parametrize(
    "document",
    [face(zones=ZONES), face("herringbone-90", NOTCH), face("flemish", openings=ROUND), face(outline=NOTCH)],
    ids=["zones", "herringbone", "circle", "notch"],
)
def test_trims_flanges_and_told_strips_cover_the_field_in_every_corner(document: Document, corner: str) -> None:
    assert_laws(*planned(document, corner))


@pytest.mark.parametrize("corner", CORNERS)
def test_joints_beside_a_zone_go_to_the_zones_own_sheets(corner: str) -> None:
    """
    Six joints of 0.375 x 2.667 in. right of the zone belong to bricks that the zone replaces.
    """
    layout, plan = planned(face(zones=ZONES), corner)
    assert plan.strips == ()
    assert uncovered(layout, plan) < 1e-6 * layout.field.area


def test_a_strip_that_nothing_reaches_is_told_with_its_size_and_place() -> None:
    """A face 1/8 in. wider than one sheet of liner without laps."""
    document = face("stack", [[0, 0], [48.125, 0], [48.125, 24], [0, 24]], margin=0)
    _, plan = planned(document, "bed lower right", Liner(lap=Length.from_inches(0)))
    (found,) = bare_findings(plan, "in")
    assert (found.code, found.severity) == ("liner-bare", "warning")
    assert (found.x, found.y) == pytest.approx((48.0625, 12), abs=1e-4)
    assert '1/8" wide and 2\'-0" long' in found.text
    assert "Tape it" in found.text


def test_a_flange_that_has_to_stay_on_is_told_with_its_sheet() -> None:
    document = face("stack", [[0, 0], [48.125, 0], [48.125, 24], [0, 24]], margin=0)
    _, plan = planned(document, "bed lower right", Liner())
    (found,) = bare_findings(plan, "in")
    assert (found.code, found.severity) == ("liner-flange", "note")
    assert "flange of sheet 1" in found.text
