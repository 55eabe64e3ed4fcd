"""What is remembered of sheets laid last makes them no other than those laid for the first time."""

from dataclasses import replace

import pytest
import shapely
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from random_panels import Document, inches, panels

from app.brickwork.bonds import BONDS
from app.brickwork.layout import lay_out
from app.brickwork.sizes import CATALOGUE
from app.documents.project_file import read_panel
from app.liner import region_sheets
from app.liner.sheets import sheet_plan
from app.liner.values import Sheet, SheetPlan
from app.panel.edits import edit_from
from app.panel.faults import Refused
from app.panel.laying import CORNERS, Laying
from app.panel.project import Liner
from app.panel.values import Panel

RANDOM = settings(max_examples=14, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck))
NEAR = 1e-6
"""Square inches."""


def plan_of(panel: Panel) -> SheetPlan:
    return sheet_plan(lay_out(panel, CATALOGUE, BONDS), Liner(columns=2, rows=3))


def plan_anew(panel: Panel) -> SheetPlan:
    region_sheets._laid_last.cache_clear()
    return plan_of(panel)


def moved(panel: Panel, dx: float, dy: float) -> Panel:
    """Every opening moved that can be."""
    for opening in panel.openings:
        fields = {"opening": opening.mark, "dx": str(dx), "dy": str(dy)}
        try:
            panel = edit_from("move_opening", fields, "in").apply(panel)
        except Refused:
            continue
    return panel


def trim_of(sheet: Sheet) -> shapely.Geometry:
    rings = [shapely.Polygon(ring) for ring in (*sheet.trim, *sheet.holes)]
    return shapely.union_all(rings[: len(sheet.trim)]).difference(shapely.union_all(rings[len(sheet.trim) :]))


def assert_same(one: SheetPlan, other: SheetPlan) -> None:
    assert [place(sheet) for sheet in one.sheets] == [place(sheet) for sheet in other.sheets]
    assert one.bare == pytest.approx(other.bare, abs=NEAR)
    for sheet, twin in zip(one.sheets, other.sheets, strict=True):
        assert sheet.area == pytest.approx(twin.area, abs=NEAR)
        assert trim_of(sheet).symmetric_difference(trim_of(twin)).area < NEAR


def place(sheet: Sheet) -> tuple[object, ...]:
    where = (sheet.number, sheet.mark, sheet.region, sheet.column, sheet.row, sheet.away)
    return (*where, sheet.outline, sheet.is_trimmed, len(sheet.trim), len(sheet.holes))


@RANDOM
@given(panels(), panels(), inches(-8, 8), inches(-8, 8), st.sampled_from(CORNERS))
def test_sheets_are_the_same_whatever_was_laid_before(
    first: Document, second: Document, dx: float, dy: float, corner: str
) -> None:
    panel, other = read_panel(first), read_panel(second)
    turned = replace(panel, laying=Laying(corner))
    bare = replace(turned, openings=())
    steps = [panel, moved(panel, dx, dy), turned, bare, other, panel]
    expected = [plan_anew(step) for step in steps]
    region_sheets._laid_last.cache_clear()
    for step, plan in zip(steps, expected, strict=True):
        assert_same(plan_of(step), plan)


def test_a_panel_laid_again_keeps_its_sheets() -> None:
    panel = read_panel(
        {
            "mark": "P",
            "thickness": 7.25,
            "outline": [[0, 0], [60, 0], [60, 44], [0, 44]],
            "openings": [{"mark": "W1", "rect": [17, 13, 21, 18]}],
            "field": {"size": "modular", "bond": "running"},
        }
    )
    before, after = plan_of(panel), plan_of(moved(panel, 1, 0))
    kept = [one is two for one, two in zip(before.sheets, after.sheets, strict=True)]
    assert any(kept)
    assert not all(kept)
