"""Seam tape: over every far edge that is not the mould's own, and over no other."""

from math import hypot

import numpy as np
import pytest
import shapely
from hypothesis import HealthCheck, given, settings
from offcut_checker import shape_of, unstretched
from random_panels import Document, panels
from shapes import rectangle
from yard import panel_of

from app.brickwork.layout import Layout, lay_out
from app.documents.project_file import read_panel
from app.lengths import Length
from app.liner.laps import laps
from app.liner.mould import Mould, mould
from app.liner.offcut_values import CuttingPlan
from app.liner.offcuts import cutting_plan
from app.liner.seam_tape import seam_tape
from app.liner.sheets import sheet_plan
from app.liner.values import SheetPlan
from app.order.rules import Rules
from app.order.sundries import sundry_lines
from app.order.work import FaceWork, PanelWork
from app.panel.project import Liner, Order

RANDOM = settings(max_examples=15, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck))
HAIR = 1e-3
RULES = Rules(Order(), Liner())
SMALL = Liner(columns=3, rows=4)


def found_for(layout: Layout, liner: Liner) -> tuple[SheetPlan, CuttingPlan]:
    plan = sheet_plan(layout, liner)
    return plan, cutting_plan(layout, plan, liner)


def assert_laws(layout: Layout, plan: SheetPlan, cutting: CuttingPlan, liner: Liner) -> None:
    """
    On plain shapes: in the mould's frame the later trim is laid beside the earlier where that is cut out; the seam is
    where they touch, and it has a flange as far as a whole sheet, laid later, would touch the mould there.
    """
    regions = {region.mark: region for region in layout.regions}
    sheets = {sheet.number: sheet for sheet in plan.sheets}
    taped = {(seam.over, seam.by): seam.length for seam in seam_tape(layout, plan, cutting)}
    moved = [lap for lap in laps(plan) if cutting.taken(lap.over).steps != (0, 0)]
    assert taped.keys() <= {(lap.over, lap.by) for lap in moved}
    for over, by in ((lap.over, lap.by) for lap in moved):
        region = regions[sheets[over].region]
        full = mould(region.bond, region.size, liner.columns, liner.rows)
        own, other = (unstretched(shape_of((*sheets[n].trim, *sheets[n].holes)), region, full.turn) for n in (over, by))
        cut = shape_of(cutting.taken(over).rings)
        away = np.array(cut.bounds[:2]) - np.array(own.bounds[:2])
        beside = shapely.transform(other, lambda at, by=away: at + by)
        flange = flange_of(full, layout.panel.laying.corner)
        lapping = touching(cut, shapely.intersection(beside, flange, grid_size=1e-7))
        seam = touching(cut, beside)
        assert taped.get((over, by), 0.0) == pytest.approx(seam - lapping, abs=0.05 + 0.01 * seam)


def touching(one: shapely.Geometry, two: shapely.Geometry) -> float:
    """How long an edge two shapes share: the one grown by a hair overlaps the other by so many hairs."""
    return float(one.buffer(HAIR, join_style="mitre").intersection(two).area / HAIR)


def flange_of(full: Mould, corner: str) -> shapely.Geometry:
    """A strip around a sheet, less what whole sheets laid before it cover: those on its near sides."""
    sheet = shapely.Polygon(full.outline)
    right, up = -1 if corner.endswith("left") else 1, 1 if "lower" in corner else -1
    (along, rise), step = full.size, full.step
    lines = full.repeats[1]
    band = sheet.buffer(1.0, join_style="mitre").difference(sheet, grid_size=1e-7)
    before = [shapely.transform(sheet, lambda at: at - (right * along, 0))]
    reach = int(hypot(*np.ptp(full.outline, axis=0)) / full.length) + 2
    for place in range(-reach - lines * 4, reach + lines * 4):
        move = np.array([place * full.length + up * -lines * step[0], up * -lines * step[1]])
        before.append(shapely.transform(sheet, lambda at, by=move: at + by))
    assert rise == pytest.approx(lines * step[1])
    near = shapely.union_all(before, grid_size=1e-6)
    return band.difference(near.buffer(1e-5, join_style="mitre"), grid_size=1e-7)


@RANDOM
@given(panels(zones=1))
def test_laws_hold_on_random_panels(document: Document) -> None:
    layout = lay_out(read_panel(document))
    assert_laws(layout, *found_for(layout, SMALL), SMALL)


@pytest.mark.parametrize("mark", ["N4", "N5", "B1"])
def test_laws_hold_for_the_yard(mark: str) -> None:
    done = panel_of(mark)
    assert_laws(done.layout, done.plan, done.cutting, done.given.liner)
    assert done.sheet_work.taped == done.work.taped


def test_a_soldier_strip_cut_from_inside_a_sheet_keeps_the_flange_at_its_end() -> None:
    """A band of one course: every strip is moved up in its sheet, and its far end stays at the sheet's own end."""
    band = {"mark": "Z1", "band": {"course": 3, "courses": 3}, "size": "modular", "bond": "soldier"}
    layout = lay_out(rectangle(96, 48, zones=[band]))
    plan, cutting = found_for(layout, Liner())
    zone = {sheet.number for sheet in plan.sheets if sheet.region == "Z1"}
    assert any(cutting.taken(number).steps != (0, 0) for number in zone)
    assert not any(seam.over in zone for seam in seam_tape(layout, plan, cutting))


def test_a_strip_moved_along_its_sheet_is_taped_over_its_far_end() -> None:
    """
    Stack bond, three rows of 96 in., the upper two open over their left 32 in.: there the first sheet keeps its last
    16 in., 24 in. high. Both come out of one sheet; the far end of one is then not the sheet's own, and the whole sheet
    beside it butts there over 24 in. On its far side, the sheet's own, the upper row laps.
    """
    aside = {"mark": "W1", "rect": [-2, 24, 34, 50]}
    layout = lay_out(rectangle(96, 72, "stack", openings=[aside], laying={"corner": "bed lower right"}))
    plan, cutting = found_for(layout, Liner())
    assert (cutting.placed, cutting.used) == (6, 5)
    ((over, by, length),) = [(s.over, s.by, s.length) for s in seam_tape(layout, plan, cutting)]
    assert (over, by) in {(3, 4), (5, 6)}
    assert length == pytest.approx(24, abs=0.01)
    (line,) = [line for line in sundry_lines([work_of(layout, plan, cutting)], RULES) if line.item == "Seam tape"]
    assert (line.net, line.unit) == (pytest.approx(2, abs=0.01), "ft")
    assert "one seam where a sheet is cut from inside another" in line.note


def work_of(layout: Layout, plan: SheetPlan, cutting: CuttingPlan) -> PanelWork:
    return PanelWork(FaceWork(layout), plan, cutting)


def test_liner_without_a_lap_has_nothing_to_tape() -> None:
    layout = lay_out(rectangle(108, 30, "stack"))
    plan, cutting = found_for(layout, Liner(lap=Length(0)))
    assert seam_tape(layout, plan, cutting) == ()
