"""Odd pieces beside a door, found by the layout.

Source: Masonry Construction magazine, *Eliminating odd-size bricks around openings*: a 6 ft door centred in an 11 ft
wall, 8 in. modular brick in running bond: each pier of 30 in. needs pieces of 6 in. and 2 in. (nominal) in alternate
courses.
"""

import numpy as np
import pytest
from shapes import case

from app.brickwork.layout import lay_out

DOOR_HEAD = 84
LEFT_JAMB, RIGHT_JAMB = 30, 102


def _pieces_at(jamb: float) -> dict[int, tuple[float, bool]]:
    """Length in inches, and small or not, of each course's cut piece at a jamb below the door's head."""
    layout = lay_out(case("door"))
    u = layout.units
    pieces = {}
    for row in layout.trim_rows():
        unit, _, length, height, is_small, _ = row
        ends = (u.x[unit], u.x[unit] + u.width[unit])
        if min(abs(end - jamb) for end in ends) < 1e-6 and u.y[unit] + height < DOOR_HEAD:
            pieces[int(u.course[unit])] = (round(length, 6), is_small)
    return pieces


@pytest.mark.parametrize("jamb", [LEFT_JAMB, RIGHT_JAMB])
def test_each_course_has_a_cut_piece_at_the_jamb(jamb: float) -> None:
    assert sorted(_pieces_at(jamb)) == list(range(31))


def test_pieces_of_6_and_2_in_alternate_at_the_jamb_that_ends_a_pier() -> None:
    lengths = [length for _, (length, _) in sorted(_pieces_at(LEFT_JAMB).items())]
    assert lengths == [6.0 if course % 2 == 0 else 2.0 for course in range(31)]


def test_pieces_are_nominally_2_and_6_where_the_next_pier_begins() -> None:
    """Nominal length is the piece and its head joint, 3/8 in."""
    nominal = [length + 0.375 for _, (length, _) in sorted(_pieces_at(RIGHT_JAMB).items())]
    assert np.allclose(nominal, [2.0 if course % 2 == 0 else 6.0 for course in range(31)])


@pytest.mark.parametrize("jamb", [LEFT_JAMB, RIGHT_JAMB])
def test_the_two_inch_pieces_are_flagged_small_and_the_six_inch_ones_are_not(jamb: float) -> None:
    assert all(is_small == (length < 3.625) for length, is_small in _pieces_at(jamb).values())
    assert sum(is_small for _, is_small in _pieces_at(jamb).values()) in (15, 16)
