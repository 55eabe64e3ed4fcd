"""Drift: growth, checkpoints no farther apart than the tolerance allows, and what holds the liner."""

from dataclasses import replace
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
from app.liner.drift import drift, expected_at, growth
from app.liner.lines import control_lines
from app.liner.tape import joint_lines, tapes
from app.liner.values import Checkpoint
from app.panel.laying import CORNERS
from app.panel.project import Day, Liner

RANDOM = settings(max_examples=150, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck))
LINER = Liner()


@pytest.mark.parametrize(("rise", "grown"), [(20, 0.432), (30, 0.648), (40, 0.864)])
def test_free_growth_of_forty_feet(rise: float, grown: float) -> None:
    """Arithmetic d x alpha x dT from the published expansion of high-impact polystyrene, 4.5e-5 per F.

    Source of the expansion: makeitfrom.com, *High Impact Polystyrene* (80e-6 per C = 44.4e-6 per F).
    """
    assert growth(480, 4.5e-5, rise) == pytest.approx(grown, abs=1e-9)
    assert growth(480, 4.5e-5, -rise) == pytest.approx(-grown, abs=1e-9)


def test_growth_is_the_same_in_celsius() -> None:
    """8.1e-5 per C is 4.5e-5 per F: a degree C is 1.8 degrees F by definition."""
    assert growth(480, 4.5e-5 * 1.8, 20 / 1.8) == pytest.approx(0.432)


def test_worst_span_is_where_growth_uses_up_the_tolerance() -> None:
    """1/8 in. / (4.5e-5 x 35 F): 105 F against the reference of 70 F; nine whole modules of 8 in."""
    found = drift(lay_out(rectangle(400, 40)), LINER, Day())
    assert found.worst_temperature == 105
    assert found.worst_span == pytest.approx(0.125 / (4.5e-5 * 35))
    assert [point.nominal for point in found.checkpoints if point.axis == "x"] == [72, 144, 216, 288, 360, 400]


def test_the_expected_reading_is_nominal_at_the_reference_temperature_and_grows_from_the_corner() -> None:
    found = drift(lay_out(rectangle(480, 40)), LINER, Day(bed_low=50, bed_high=110))
    last = [point for point in found.checkpoints if point.axis == "x"][-1]
    assert (last.nominal, last.position, last.control) == (480, 0, "edge 3")
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
    found = drift(lay_out(rectangle(480, 40, strips=strips)), LINER, Day(bed_high=110), corner="bed lower right")
    by_control = {point.control: point for point in found.checkpoints if point.axis == "x"}
    assert by_control["strip R1"].expected_high == 200
    last = by_control["edge 1"]
    assert (last.held_from, last.held_by) == (200, "strip R1")
    assert last.expected_high == pytest.approx(480 + growth(280, 4.5e-5, 40))


def test_a_fixing_resets_growth_beyond_it_only() -> None:
    fixed = rectangle(480, 40, fixings=[{"line": [[240, 0], [240, 40]], "by": "glue"}])
    found = drift(lay_out(fixed), LINER, Day(), corner="bed lower right")
    for point in (point for point in found.checkpoints if point.axis == "x"):
        assert point.held_from == (240 if point.nominal >= 240 else 0)
        assert point.grows_per_degree == pytest.approx((point.nominal - point.held_from) * 4.5e-5)


def test_a_sheet_that_drifts_past_the_tolerance_is_found_with_the_window_to_lay_it_in() -> None:
    """A 48 in. sheet moves 1/8 in. over 57.87 F: 12.13 to 127.87 F about 70 F."""
    layout = lay_out(rectangle(96, 48))
    assert drift(layout, LINER, Day()).findings == ()
    found = drift(layout, LINER, Day(bed_low=60, bed_high=140))
    assert found.window == pytest.approx((70 - 57.87037, 70 + 57.87037))
    (finding,) = found.findings
    assert (finding.code, finding.severity, finding.x, finding.y) == ("liner-sheet-drift", "warning", 96, 0)
    assert "One sheet of 4'-0\"" in finding.text
    assert "between 13 and 127 °F" in finding.text


def test_a_checkpoint_says_within_which_temperatures_it_stays_in_its_band() -> None:
    for point in drift(lay_out(case("b1")), LINER, Day()).checkpoints:
        assert point.window is not None
        for temperature in point.window:
            assert abs(expected_at(point, temperature) - point.nominal) == pytest.approx(point.band)


def test_liner_that_never_leaves_its_reference_temperature_is_read_at_control_lines_only() -> None:
    found = drift(lay_out(rectangle(480, 40)), LINER, Day(bed_low=70, bed_high=70))
    assert found.worst_span is None
    assert [point.control for point in found.checkpoints] == ["edge 3", "top"]


def test_a_span_under_one_module_is_read_at_every_module() -> None:
    found = drift(lay_out(rectangle(48, 24)), replace(LINER, tolerance=Length(25_400)), Day())
    assert [point.nominal for point in found.checkpoints if point.axis == "x"] == [8, 16, 24, 32, 40, 48]
    assert len(found.findings) == 1


def test_an_empty_brick_field_has_no_checkpoints() -> None:
    assert drift(lay_out(rectangle(20, 10, margin=5)), LINER, Day()).checkpoints == ()


@RANDOM
@given(panels(zones=0), st.sampled_from(CORNERS), st.integers(71, 140), st.sampled_from([0.01, 0.02, 0.05]))
def test_spans_never_exceed_the_tolerance_span(document: Document, corner: str, high: int, tolerance: float) -> None:
    layout = lay_out(read_panel(document))
    liner = replace(LINER, tolerance=Length.from_inches(tolerance))
    found = drift(layout, liner, Day(bed_low=70, bed_high=high), corner=corner)
    if layout.field.is_empty:
        return
    for tape in tapes(layout, corner):
        own = [point for point in found.checkpoints if point.axis == tape.axis]
        modules = max(1, floor(tolerance / (4.5e-5 * (high - 70)) / tape.module + 1e-6))
        assert_close_enough(layout, own, modules * tape.module, joint_lines(layout, tape, liner))
        assert {point.control for point in own if point.control} == {name for _, name in control_lines(layout, tape)}
        assert all(point.position == tape.running(point.nominal) for point in own)


def assert_close_enough(layout: Layout, points: list[Checkpoint], most: float, joints: np.ndarray) -> None:
    """Within `most`, or else with no joint line nearer; a point without a control line stands on a joint line."""
    last = 0.0
    for point in points:
        between = joints[(joints > last + 1e-5) & (joints < point.nominal - 1e-5)]
        assert point.nominal - last <= most + 1e-5 or not len(between)
        assert point.control or np.abs(joints - point.nominal).min() < 1e-5
        last = point.nominal
    assert last == pytest.approx(max(layout.panel.width if points[0].axis == "x" else layout.panel.height, last))


@RANDOM
@given(panels(zones=0), st.sampled_from(CORNERS), st.integers(71, 200), st.integers(0, 60))
def test_a_hotter_bed_never_takes_checkpoints_away(document: Document, corner: str, high: int, hotter: int) -> None:
    layout = lay_out(read_panel(document))
    liner = replace(LINER, tolerance=Length.from_inches(0.02))
    cool = drift(layout, liner, Day(bed_low=70, bed_high=high), corner=corner).checkpoints
    hot = drift(layout, liner, Day(bed_low=70, bed_high=high + hotter), corner=corner).checkpoints
    for axis in ("x", "y"):
        assert sum(point.axis == axis for point in hot) >= sum(point.axis == axis for point in cool)
    controls = {(point.axis, point.nominal) for point in cool if point.control}
    assert controls <= {(point.axis, point.nominal) for point in hot}


def test_every_example_starts_its_readings_from_the_hook() -> None:
    for corner in CORNERS:
        layout = lay_out(example("window"))
        points = drift(layout, LINER, Day(), corner=corner).checkpoints
        assert max(point.nominal for point in points if point.axis == "x") == layout.panel.width
        assert max(point.nominal for point in points if point.axis == "y") == layout.panel.height
