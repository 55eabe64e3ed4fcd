"""Drift: growth, checkpoints no farther apart than the tolerance allows, and what holds the liner."""

from dataclasses import replace
from itertools import pairwise
from math import floor

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from random_panels import Document, panels
from shapes import case, example, rectangle

from app.brickwork.layout import Layout, lay_out
from app.documents.project_file import read_panel
from app.lengths import Length
from app.liner.drift import drift, expected_at
from app.liner.fixes import fixes
from app.liner.growth import growth
from app.liner.lines import control_lines, held_lines
from app.liner.sheets import sheet_plan
from app.liner.tape import Tape, joint_lines, tapes
from app.liner.values import Checkpoint
from app.panel.faults import Refused
from app.panel.laying import CORNERS, Laying
from app.panel.project import Day, Liner

RANDOM = settings(max_examples=80, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck))
LINER = Liner()
FROM_THE_LEFT = {"corner": "bed lower right"}
"""Of the face, as the bed is mirrored."""


def from_corner(layout: Layout, corner: str) -> Layout:
    """The same face, laid from another corner."""
    return replace(layout, panel=replace(layout.panel, laying=Laying(corner)))


def test_worst_span_is_where_growth_uses_up_the_tolerance() -> None:
    """1/8 in. / (4.5e-5 x 35 F) = 79 in.: 105 F against the reference of 70 F; nine whole modules of 8 in. are 72 in.

    400 in. are halved at the joints at 200, then 96 or 104 (both as near to 100), 296 or 304, and once more.
    """
    found = drift(lay_out(rectangle(400, 40)), LINER, Day())
    assert found.worst_temperature == 105
    assert found.worst_span == pytest.approx(0.125 / (4.5e-5 * 35))
    assert [point.nominal for point in found.checkpoints if point.axis == "x"] == [48, 96, 144, 200, 248, 296, 344, 400]


def test_the_expected_reading_is_nominal_at_the_reference_temperature_and_grows_from_the_corner() -> None:
    found = drift(lay_out(rectangle(480, 40)), LINER, Day(bed_low=50, bed_high=110))
    last = [point for point in found.checkpoints if point.axis == "x"][-1]
    assert (last.nominal, last.position, last.control) == (480, 0, "form edge, bed right")
    assert expected_at(last, 70) == 480
    assert last.expected_high == expected_at(last, 110) == pytest.approx(480.864)
    assert last.expected_low == expected_at(last, 50) == pytest.approx(480 - 0.432)
    assert last.band == 0.125


def test_marks_count_from_the_hook_along_each_axis() -> None:
    points = drift(lay_out(case("b1")), LINER, Day()).checkpoints
    for axis in ("x", "y"):
        own = [point for point in points if point.axis == axis]
        assert [point.mark for point in own] == [f"{axis.upper()}{k}" for k in range(1, len(own) + 1)]
        assert [point.nominal for point in own] == sorted(point.nominal for point in own)


def test_a_strip_resets_growth() -> None:
    strips = [{"mark": "R1", "line": [[200, 0], [200, 40]], "width": 0.75}]
    found = drift(lay_out(rectangle(480, 40, strips=strips, laying=FROM_THE_LEFT)), LINER, Day(bed_high=110))
    by_control = {point.control: point for point in found.checkpoints if point.axis == "x"}
    assert by_control["strip R1"].expected_high == 200
    last = by_control["form edge, bed left"]
    assert (last.held_from, last.held_by) == (200, "strip R1")
    assert last.expected_high == pytest.approx(480 + growth(280, 4.5e-5, 40))


def test_a_fixing_resets_growth_beyond_it_only() -> None:
    fixed = rectangle(480, 40, fixings=[{"line": [[240, 0], [240, 40]], "by": "glue"}], laying=FROM_THE_LEFT)
    found = drift(lay_out(fixed), LINER, Day())
    for point in (point for point in found.checkpoints if point.axis == "x"):
        assert point.held_from == (240 if point.nominal >= 240 else 0)
        assert point.grows_per_degree == pytest.approx((point.nominal - point.held_from) * 4.5e-5)


def test_a_sheet_that_drifts_past_the_tolerance_is_found_with_the_window_to_lay_it_in() -> None:
    """A sheet of 6 x 8 in. and half a brick of teeth, 52 in., moves 1/8 in. over 53.42 F about 70 F."""
    layout = lay_out(rectangle(96, 48))
    assert drift(layout, LINER, Day()).findings == ()
    found = drift(layout, LINER, Day(bed_low=60, bed_high=140))
    assert found.window == pytest.approx((70 - 53.41880, 70 + 53.41880))
    (finding,) = found.findings
    assert (finding.code, finding.severity, finding.x, finding.y) == ("liner-sheet-drift", "warning", 96, 0)
    assert "One sheet of 4'-4\"" in finding.text
    assert "between 17 and 123 °F" in finding.text


def test_no_sheet_is_longer_than_the_brick_it_lies_on() -> None:
    """20 in. of brick on a mould of 52: 9.6 in. would be needed for the tolerance at 360 F, so 20 in. pass at 210 F."""
    for low, high, is_past in ((60, 140, False), (60, 250, True)):
        found = drift(lay_out(rectangle(20, 20)), LINER, Day(bed_low=low, bed_high=high))
        assert [one.code for one in found.findings] == ["liner-sheet-drift"] * is_past


@pytest.mark.parametrize("bond", ["running", "stack", "flemish", "third-raked", "basket-weave", "herringbone-45"])
@pytest.mark.parametrize("size", [(20, 20), (96, 48), (300, 120)])
def test_one_sheet_drifts_on_the_days_on_which_a_sheet_is_fixed_for_its_length(
    bond: str, size: tuple[int, int]
) -> None:
    zones = [{"mark": "Z1", "rect": [8, 8, 1, 1], "size": "utility", "bond": "stack"}]
    layout = lay_out(rectangle(*size, bond, zones=zones))
    plan = sheet_plan(layout, LINER)
    told = []
    for high in range(80, 260, 9):
        day = Day(bed_low=70, bed_high=high)
        swing = [fix for fix in fixes(plan, (), LINER, day) if fix.when == "swing"]
        told.append(bool(swing))
        assert ("liner-sheet-drift" in [one.code for one in drift(layout, LINER, day).findings]) == told[-1]
    assert {*told} == {False, True}


def test_a_checkpoint_says_within_which_temperatures_it_stays_in_its_band() -> None:
    for point in drift(lay_out(case("b1")), LINER, Day()).checkpoints:
        assert point.window is not None
        for temperature in point.window:
            assert abs(expected_at(point, temperature) - point.nominal) == pytest.approx(point.band)


def test_liner_that_never_leaves_its_reference_temperature_is_read_at_control_lines_only() -> None:
    found = drift(lay_out(rectangle(480, 40)), LINER, Day(bed_low=70, bed_high=70))
    assert found.worst_span is None
    assert [point.control for point in found.checkpoints] == ["form edge, bed right", "top"]


def test_a_span_under_one_module_is_read_at_every_module() -> None:
    found = drift(lay_out(rectangle(48, 24)), replace(LINER, tolerance=Length(25_400)), Day())
    assert [point.nominal for point in found.checkpoints if point.axis == "x"] == [8, 16, 24, 32, 40, 48]
    assert len(found.findings) == 1


def test_an_empty_brick_field_has_no_checkpoints() -> None:
    assert drift(lay_out(rectangle(20, 10, margin=5)), LINER, Day()).checkpoints == ()


@st.composite
def held_panels(draw: st.DrawFn) -> Document:
    """A random panel laid from any corner, with up to two fixing lines from edge to edge."""
    document = draw(panels(zones=0))
    width, height = (max(point[k] for point in document["outline"]) for k in (0, 1))
    lines = [[[x, 0], [x, height]] for x in draw(st.lists(st.integers(1, int(width) - 1), max_size=1))]
    lines += [[[0, y], [width, y]] for y in draw(st.lists(st.integers(1, int(height) - 1), max_size=1))]
    kept = [line for line in lines if is_taken({**document, "fixings": [{"line": line}]})]
    corner = draw(st.sampled_from(CORNERS))
    return {**document, "fixings": [{"line": line} for line in kept], "laying": {"corner": corner}}


def is_taken(document: Document) -> bool:
    try:
        read_panel(document)
    except Refused:
        return False
    return True


@RANDOM
@given(held_panels(), st.integers(71, 140), st.sampled_from([0.005, 0.01, 0.02, 0.05]))
def test_spans_never_exceed_the_tolerance_span(document: Document, high: int, tolerance: float) -> None:
    """Two lines that are read are never farther apart than where growth = tolerance, unless no joint lies between."""
    layout = lay_out(read_panel(document))
    liner = replace(LINER, tolerance=Length.from_inches(tolerance))
    found = drift(layout, liner, Day(bed_low=70, bed_high=high))
    if layout.field.is_empty:
        return
    most = liner.tolerance.inches / (4.5e-5 * (high - 70))
    for tape in tapes(layout, layout.panel.laying.corner):
        own = [point for point in found.checkpoints if point.axis == tape.axis]
        assert_close_enough(tape, own, most, joint_lines(layout, tape, liner))
        names = {name for _, name in control_lines(layout, tape)}
        held = {name for _, name in held_lines(layout, tape, liner) if name.startswith("fixing")}
        assert names <= {point.control for point in own if point.control} <= names | held
        assert all(point.position == tape.running(point.nominal) for point in own)


def assert_close_enough(tape: Tape, points: list[Checkpoint], most: float, joints: np.ndarray) -> None:
    """Within `most` in whole modules, or no joint line between; a point without a name stands on a joint line."""
    last = 0.0
    for point in points:
        between = joints[(joints > last + 1e-5) & (joints < point.nominal - 1e-5)]
        assert point.nominal - last <= floor(most / tape.module + 1e-6) * tape.module + 1e-5 or not len(between)
        assert point.control or np.abs(joints - point.nominal).min() < 1e-5
        last = point.nominal
    assert last == tape.reach


@RANDOM
@given(held_panels(), st.integers(71, 200), st.integers(0, 60), st.integers(20, 70))
def test_a_hotter_bed_never_takes_a_checkpoint_away(document: Document, high: int, hotter: int, low: int) -> None:
    layout = lay_out(read_panel(document))
    liner = replace(LINER, tolerance=Length.from_inches(0.02))
    cool = drift(layout, liner, Day(bed_low=low, bed_high=high)).checkpoints
    hot = drift(layout, liner, Day(bed_low=low, bed_high=high + hotter)).checkpoints
    assert places(cool) <= places(hot)


@pytest.mark.parametrize("corner", CORNERS)
def test_every_hotter_day_keeps_every_checkpoint_of_a_large_panel(corner: str) -> None:
    layout = from_corner(lay_out(case("b1")), corner)
    days = [places(drift(layout, LINER, Day(bed_low=70, bed_high=high)).checkpoints) for high in range(70, 250)]
    assert all(cooler <= hotter for cooler, hotter in pairwise(days))
    assert len(days[0]) < len(days[40]) < len(days[-1])


def places(points: tuple[Checkpoint, ...]) -> set[tuple[str, float, str]]:
    return {(point.axis, point.nominal, point.control) for point in points}


@pytest.mark.parametrize("by", ["strip", "fixing"])
def test_a_strip_or_a_fixing_resets_growth(by: str) -> None:
    """Beyond it every reading grows from there, before it none changes."""
    line = {"line": [[240, 0], [240, 40]]}
    more = {"strips": [{"mark": "R1", "width": 0.75, **line}]} if by == "strip" else {"fixings": [line]}
    without, held = (
        drift(lay_out(rectangle(480, 40, laying=FROM_THE_LEFT, **things)), LINER, Day()).checkpoints
        for things in ({}, more)
    )
    for point in (point for point in held if point.axis == "x"):
        assert point.grows_per_degree == pytest.approx(4.5e-5 * (point.nominal - (240 if point.nominal >= 240 else 0)))
    assert max(point.grows_per_degree for point in held) < max(point.grows_per_degree for point in without) * 0.6


def test_spans_say_between_which_lines_and_at_which_temperatures_they_may_be_laid() -> None:
    """A span of 240 in. uses up 1/8 in. over 0.125 / (4.5e-5 x 240) = 11.57 F."""
    fixed = rectangle(480, 40, fixings=[{"line": [[240, 0], [240, 40]]}], laying=FROM_THE_LEFT)
    spans = [span for span in drift(lay_out(fixed), LINER, Day()).spans if span.axis == "x"]
    assert [(span.start, span.end, span.held_by) for span in spans] == [
        (0, 240, "starting corner"),
        (240, 480, "fixing 1"),
    ]
    assert all((span.low, span.high) == pytest.approx((70 - 11.574, 70 + 11.574), abs=1e-3) for span in spans)


def test_liner_that_does_not_grow_may_be_laid_at_any_temperature() -> None:
    found = drift(lay_out(rectangle(480, 40)), replace(LINER, expansion_per_degree=0.0), Day())
    assert {(span.low, span.high) for span in found.spans} == {(None, None)}


def test_every_example_starts_its_readings_from_the_hook() -> None:
    for corner in CORNERS:
        layout = from_corner(lay_out(example("window")), corner)
        points = drift(layout, LINER, Day()).checkpoints
        assert max(point.nominal for point in points if point.axis == "x") == layout.panel.width
        assert max(point.nominal for point in points if point.axis == "y") == layout.panel.height
