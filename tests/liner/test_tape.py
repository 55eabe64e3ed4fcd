"""Tapes: steel grows too, and joint lines are where brick begins."""

import numpy as np
import pytest
from shapes import example, rectangle

from app.brickwork.bonds import BONDS
from app.brickwork.layout import lay_out
from app.liner.tape import joint_lines, steel_tape_correction, tapes
from app.panel.project import Liner

CORNER = "bed lower left"


def test_the_printed_steel_tape_example() -> None:
    """Source: surveying forum, *Steel Taping Puzzle*, printed example: 304.8082 m at 42 F, factor 0.999832."""
    assert steel_tape_correction(1.0, 42) == pytest.approx(0.999832, abs=5e-7)
    assert steel_tape_correction(304.8082, 42) == pytest.approx(304.757, abs=5e-4)


def test_a_steel_tape_is_right_at_its_standard_temperature() -> None:
    """68 F: same source."""
    assert steel_tape_correction(480.0, 68) == 480.0


def test_the_hook_is_at_the_faces_right_when_laying_starts_at_the_beds_lower_left() -> None:
    across, up = tapes(lay_out(rectangle(100, 40)), "bed lower left")
    assert (across.running(90), across.running(0)) == (10, 100)
    assert up.running(10) == 10
    across, up = tapes(lay_out(rectangle(100, 40)), "bed upper right")
    assert (across.running(90), up.running(10)) == (90, 30)


def test_joint_lines_of_running_bond_are_head_modules_and_courses() -> None:
    layout = lay_out(rectangle(48, 24))
    across, up = tapes(layout, "bed lower right")
    assert joint_lines(layout, across, Liner()) == pytest.approx(np.arange(7) * 8)
    assert joint_lines(layout, up, Liner()) == pytest.approx(np.arange(10) * 8 / 3)


def test_joint_lines_of_flemish_bond_follow_stretcher_and_header() -> None:
    layout = lay_out(rectangle(48, 24, "flemish"))
    across, _ = tapes(layout, "bed lower right")
    assert joint_lines(layout, across, Liner()) == pytest.approx([0, 8, 12, 20, 24, 32, 36, 44, 48])


@pytest.mark.parametrize("bond", BONDS)
def test_every_joint_line_is_the_start_of_some_unit(bond: str) -> None:
    layout = lay_out(example("plain", bond=bond))
    across, up = tapes(layout, CORNER)
    sides = {"x": (layout.units.x, layout.units.width), "y": (layout.units.y, layout.units.height)}
    for tape in (across, up):
        low, length = sides[tape.axis]
        lines = np.array([tape.running(line) for line in joint_lines(layout, tape, Liner())])
        gaps = np.abs(lines[:, None] - np.concatenate([low, low + length])).min(axis=1)
        assert gaps.max() < 0.5, "a joint line with no brick within a joint of it"
