"""Joints ahead of a checkpoint: those that the brick really leaves before the next control line, and what they give."""

from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from random_panels import Document, panels
from shapes import rectangle

from app.brickwork.layout import Layout, lay_out
from app.documents.project_file import read_panel
from app.lengths import Length
from app.liner.drift import drift
from app.liner.readings_ahead import joints_ahead
from app.liner.readings_values import Ahead
from app.liner.values import Checkpoint
from app.panel.laying import CORNERS, Laying
from app.panel.project import Day, Liner

RANDOM = settings(max_examples=30, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck))
LINER = Liner(tolerance=Length.from_inches(0.03))
GIVE = LINER.joint_give.inches
PLAIN = ("running", "stack", "flemish", "third-raked", "monk", "header")


def every(layout: Layout, liner: Liner = LINER) -> list[tuple[Checkpoint, Ahead]]:
    found = drift(layout, liner, Day())
    return [(point, joints_ahead(layout, liner, found, point)) for point in found.checkpoints]


def head_joints(layout: Layout) -> list[tuple[float, float]]:
    """Left and right end of every head joint between two pieces of the lowest course, as they lie in the face."""
    units = layout.units
    row = np.flatnonzero(np.abs(units.y - units.y.min()) < 1e-6)
    row = row[np.argsort(units.x[row])]
    return [(float(units.x[a] + units.width[a]), float(units.x[b])) for a, b in pairwise(row)]


def bed_joints(layout: Layout) -> list[tuple[float, float]]:
    """Bottom and top of every bed joint between two courses."""
    return [(low.top, high.bottom) for low, high in pairwise(layout.courses)]


@pytest.mark.parametrize("corner", CORNERS)
@pytest.mark.parametrize("bond", PLAIN)
def test_joints_ahead_are_the_gaps_between_bricks_before_the_next_line(bond: str, corner: str) -> None:
    fixings = [{"line": [[100, 0], [100, 60]], "by": "glue"}]
    layout = lay_out(replace(rectangle(260, 60, bond, fixings=fixings), laying=Laying(corner)))
    reach = {"x": (260.0, corner.endswith("left")), "y": (60.0, "upper" in corner)}
    for point, ahead in every(layout):
        length, is_turned = reach[point.axis]
        low, high = sorted(length - at if is_turned else at for at in (point.nominal, ahead.nominal))
        joints = head_joints(layout) if point.axis == "x" else bed_joints(layout)
        between = [joint for joint in joints if joint[0] > low - 1e-6 and joint[1] < high + 1e-6]
        assert ahead.joints == len(between)


def test_a_fixing_before_the_next_control_line_ends_the_joints() -> None:
    fixings = [{"line": [[100, 0], [100, 40]], "by": "glue"}]
    layout = lay_out(replace(rectangle(260, 40, fixings=fixings), laying=Laying("bed lower right")))
    for point, ahead in every(layout):
        if point.axis == "x":
            lines = [("fixing 1", 100), ("form edge, bed left", 260), ("", 260)]
            expected = lines[(point.nominal >= 100) + (point.nominal >= 260)]
            assert (ahead.control, ahead.nominal) == expected
            assert ahead.grows_per_degree == pytest.approx((expected[1] - point.nominal) * 4.5e-5)


def test_a_joint_gives_no_more_than_a_third_of_itself() -> None:
    """Joints keep between 1/4 and 1/2 in. for 3/8 nominal: common practice."""
    liner = replace(LINER, joint_give=Length.from_inches(1))
    for point, ahead in every(lay_out(rectangle(260, 40)), liner):
        joint = 3 / 8 if point.axis == "x" else 5 / 12
        assert ahead.joint == pytest.approx(joint)
        if ahead.joints:
            assert (ahead.squeeze, ahead.stretch) == pytest.approx((joint / 3, joint / 3))


def test_what_the_fit_has_used_of_a_joint_is_not_there_a_second_time() -> None:
    """A window 3/8 in. off courses and half modules: joints before it give, and keep the rest of their give."""
    opening = {"mark": "W1", "rect": [96.25, 80.3, 47.6, 53.2]}
    fit = {"courses": True, "heads": True}
    panel = rectangle(260, 200, openings=[opening], margin=0.375, fit=fit)
    layout = lay_out(replace(panel, laying=Laying("bed lower right")))
    used = 0
    for point, ahead in every(layout):
        joints = head_joints(layout) if point.axis == "x" else bed_joints(layout)
        nominal = 3 / 8 if point.axis == "x" else 5 / 12
        start, end = point.nominal - 1e-6, ahead.nominal + 1e-6
        inside = [high - low - nominal for low, high in joints if start < low and high < end]
        if inside:
            assert ahead.squeeze == pytest.approx(GIVE + min(0.0, *inside), abs=1e-6)
            assert ahead.stretch == pytest.approx(GIVE - max(0.0, *inside), abs=1e-6)
            used += max(map(abs, inside)) > 1e-3
    assert used > 3


@RANDOM
@given(panels(zones=0), st.sampled_from(CORNERS))
def test_every_checkpoint_of_any_panel_has_something_sound_ahead(document: Document, corner: str) -> None:
    layout = lay_out(replace(read_panel(document), laying=Laying(corner)))
    reach = {"x": layout.panel.width, "y": layout.panel.height}
    for point, ahead in every(layout):
        assert point.nominal <= ahead.nominal <= reach[point.axis] + 1e-6
        assert 0 <= ahead.joints * ahead.joint <= ahead.nominal - point.nominal + 1e-6
        assert bool(ahead.control) == (ahead.nominal > point.nominal)
        assert 0 <= min(ahead.squeeze, ahead.stretch) <= GIVE + 1e-9
