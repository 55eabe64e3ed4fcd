"""Lengths of brickwork that courses out: piers, openings and heights of 215 x 65 brick with 10 mm joints.

Source: *Brickwork Dimensions*, technical information sheet 9, and *Brick Dimension Tables Explained*,
firstinarchitecture.co.uk: coordinating size CO = 112.5 mm x half bricks; a pier is CO - 10 (outside to outside), an
opening CO + 10, and what is inside one side and outside the other is CO; 4 courses make 300 mm, 40 make 3000.
"""

import numpy as np
import pytest
from shapes import rectangle

from app.brickwork.layout import Layout, lay_out
from app.panel.values import Panel

MM = 1 / 25.4
UK = "uk 215x65"

ROWS = [(1, 215, 225, 235), (3, 665, 675, 685), (6, 1340, 1350, 1360), (36, 8090, 8100, 8110)]
"""Bricks, CO-, CO, CO+ in mm as the sheet prints them."""


def _wall(width_mm: float, bond: str = "running", courses: int = 4, **more: object) -> Panel:
    return rectangle(width_mm * MM, courses * 75 * MM, bond, UK, **more)


def _lengths_mm(layout: Layout, course: int) -> list[float]:
    """Lengths of one course's pieces from left to right, mm."""
    u = layout.units
    chosen = np.flatnonzero(u.course == course)
    return [round(float(u.width[k]) / MM, 3) for k in chosen[np.argsort(u.x[chosen])]]


@pytest.mark.parametrize(("bricks", "pier", "coordinating", "opening"), ROWS)
def test_a_pier_of_co_minus_has_whole_bricks_and_half_bats(
    bricks: int, pier: float, coordinating: float, opening: float
) -> None:
    layout = lay_out(_wall(pier))
    assert _lengths_mm(layout, 0) == [215] * bricks
    assert _lengths_mm(layout, 1) == [102.5, *[215] * (bricks - 1), 102.5]
    assert layout.small == 0
    assert (coordinating - pier, opening - coordinating) == (10, 10)


@pytest.mark.parametrize("bricks", [1, 2, 5])
def test_a_pier_of_an_odd_number_of_half_bricks_has_a_half_bat_at_one_end(bricks: int) -> None:
    """CO- of 2n + 1 half bricks: 112.5 (2n + 1) - 10 mm."""
    layout = lay_out(_wall(112.5 * (2 * bricks + 1) - 10))
    assert _lengths_mm(layout, 0) == [*[215] * bricks, 102.5]
    assert _lengths_mm(layout, 1) == [102.5, *[215] * bricks]


@pytest.mark.parametrize(("bricks", "pier", "coordinating", "opening"), ROWS[:3])
def test_an_opening_of_co_plus_cuts_no_brick(bricks: int, pier: float, coordinating: float, opening: float) -> None:
    """Three bricks, the opening, three bricks; from the top of one course to the foot of another."""
    del bricks, pier
    width, hole = 2 * 665 + opening, [665 * MM, 290 * MM, opening * MM, 610 * MM]
    layout = lay_out(_wall(width, "stack", 16, openings=[{"mark": "W1", "rect": hole}]))
    assert len(layout.trims) == 0
    assert len(layout.units) == 16 * 6 + 8 * round(coordinating / 225)


def test_an_opening_of_co_plus_in_running_bond_makes_half_bats_only() -> None:
    hole = [665 * MM, 290 * MM, 1360 * MM, 610 * MM]
    layout = lay_out(_wall(2 * 665 + 1360, "running", 16, openings=[{"mark": "W1", "rect": hole}]))
    assert set((layout.trims.length / MM).round(3)) == {102.5}
    assert layout.small == 0


def test_an_opening_of_co_instead_of_co_plus_cuts_a_brick_in_every_course() -> None:
    hole = [665 * MM, 290 * MM, 1350 * MM, 610 * MM]
    layout = lay_out(_wall(2 * 665 + 1350, "stack", 16, openings=[{"mark": "W1", "rect": hole}]))
    assert (layout.trims.length / MM).round(3).tolist() == [205] * 16


@pytest.mark.parametrize(("courses", "height"), [(4, 300), (40, 3000)])
def test_so_many_courses_make_so_many_millimetres(courses: int, height: float) -> None:
    layout = lay_out(_wall(440, "stack", courses + 1))
    assert layout.courses[courses].bottom / MM == pytest.approx(height, abs=1e-6)


def test_joints_are_one_fewer_outside_to_outside_and_one_more_in_an_opening() -> None:
    """Inside to outside as many joints as units; outside to outside one fewer; an opening one more."""
    hole = [665 * MM, 0, 1360 * MM, 75 * MM]
    units = lay_out(_wall(2 * 665 + 1360, "stack", 1, openings=[{"mark": "W1", "rect": hole}])).units
    starts, ends = np.sort(units.x) / MM, np.sort(units.x + units.width) / MM
    assert ends[2] - starts[0] == pytest.approx(3 * 215 + 2 * 10)
    assert starts[2] - starts[0] == pytest.approx(2 * 215 + 2 * 10)
    assert starts[3] - ends[2] == pytest.approx(6 * 215 + 7 * 10)
