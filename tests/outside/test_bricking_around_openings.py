"""Openings that give no cut, and what may stand at a jamb.

Source: Masonry Construction magazine, *Bricking around openings*: masonry opening widths of n x 4 + 3/8 in. and
heights of n x 2-2/3 in. give no cut; no piece at a jamb is smaller than the unit's width (modular 3-5/8 in.), use a
half and a three-quarter. Placing, by common practice: a jamb stands at a head joint, a sill and a head at a course.
Half bat (L + j)/2 - j = 3-5/8 in. and three-quarter 0.75 (L + j) - j = 5-5/8 in. are arithmetic (not 0.75 L).
"""

import pytest
from shapes import rectangle

from app.brickwork.layout import Layout, lay_out

COURSE = 8 / 3
JAMB = 4 * 8 - 3 / 8
"""Where the fourth brick of a course ends, inches."""


def _wall(width: float, height: float, bond: str = "stack", jamb: float = JAMB) -> Layout:
    """A wall 15 ft x 8 ft of whole modules with one opening on its sixth course."""
    opening = {"mark": "W1", "rect": [jamb, 6 * COURSE, width, height]}
    return lay_out(rectangle(180 - 12 + 7.625, 96, bond, openings=[opening]))


@pytest.mark.parametrize("halves", [6, 8, 10, 12, 20])
@pytest.mark.parametrize("courses", [3, 7, 12, 24])
def test_widths_of_n_x_4_and_three_eighths_and_heights_of_n_courses_cut_no_brick(halves: int, courses: int) -> None:
    assert len(_wall(halves * 4 + 3 / 8, courses * COURSE).trims) == 0


@pytest.mark.parametrize("halves", [5, 6, 7, 8, 15])
def test_in_running_bond_the_jambs_take_half_bats_in_every_other_course_and_nothing_else(halves: int) -> None:
    layout = _wall(halves * 4 + 3 / 8, 12 * COURSE, "running")
    inner = [k for k, unit in enumerate(layout.trims.unit) if 4 < layout.units.x[unit] < 170]
    assert set(layout.trims.length[inner].round(6)) == {3.625}
    assert len(inner) == 12
    assert not layout.trims.is_small[inner].any()


@pytest.mark.parametrize("off", [1, 2, 3])
def test_a_width_between_the_modules_cuts_bricks(off: float) -> None:
    assert len(_wall(48 + 3 / 8 + off, 12 * COURSE).trims) == 12


@pytest.mark.parametrize("off", [0.5, 1, 2])
def test_a_height_between_the_courses_rips_bricks(off: float) -> None:
    layout = _wall(48 + 3 / 8, 12 * COURSE + off)
    assert layout.trims.height.round(6).tolist() == [round(2.25 - off, 6)] * 6


def test_a_half_bat_at_the_jamb_is_not_small_and_anything_shorter_is() -> None:
    half = _wall(48, 12 * COURSE, jamb=JAMB - 4)
    assert 3.625 in half.trims.length.round(6)
    assert half.small == 0
    shorter = _wall(48, 12 * COURSE, jamb=JAMB - 4 - 1 / 16)
    assert shorter.small == 12


def test_a_three_quarter_at_the_jamb_is_5_and_five_eighths() -> None:
    layout = _wall(50 + 3 / 8, 12 * COURSE, jamb=JAMB - 2)
    assert set(layout.trims.length.round(6)) == {5.625}
    assert 5.625 == 0.75 * (7.625 + 0.375) - 0.375
