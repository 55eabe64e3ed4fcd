"""A soldier band leaves the courses above it undisturbed; a band as high as one rowlock course does not.

Source: faces of brick positions, US Navy training manual 14069, fig. 7-53. Arithmetic: a soldier of modular brick
with its joint is 8 in. high, three courses; a rowlock with its joint is 4 in., a course and a half.
"""

import numpy as np
import pytest
from shapes import rectangle

from app.brickwork.bond import KINDS
from app.brickwork.layout import lay_out

WIDE = 168
"""21 stretchers with their joints, 64 soldiers with theirs."""


@pytest.mark.parametrize("course", [3, 6, 10])
def test_a_band_of_three_courses_of_soldiers_trims_no_brick(course: int) -> None:
    band = {"mark": "S1", "band": {"course": course, "courses": 3}, "size": "modular", "bond": "soldier"}
    layout = lay_out(rectangle(WIDE, 64, "stack", zones=[band]))
    assert len(layout.trims) == 0
    assert layout.by_kind() == {"stretcher": (21 * 21, 0), "soldier": (64, 0)}


def test_the_courses_above_a_soldier_band_stand_where_they_stood_without_it() -> None:
    band = {"mark": "S1", "band": {"course": 6, "courses": 3}, "size": "modular", "bond": "soldier"}
    without = lay_out(rectangle(WIDE, 64, "running")).units
    layout = lay_out(rectangle(WIDE, 64, "running", zones=[band]))
    with_band = layout.units
    above = with_band.kind == KINDS.index("stretcher")
    assert np.unique(with_band.y[above & (with_band.y > 20)].round(9)).tolist() == pytest.approx(
        np.unique(without.y[without.y > 23].round(9)).tolist()
    )
    assert set(layout.trims.height.round(6)) == {2.25}


def test_a_soldier_stands_7_and_five_eighths_high_and_2_and_a_quarter_wide() -> None:
    band = {"mark": "S1", "band": {"course": 6, "courses": 3}, "size": "modular", "bond": "soldier"}
    units = lay_out(rectangle(WIDE, 64, "running", zones=[band])).units
    soldiers = units.kind == KINDS.index("soldier")
    assert units.width[soldiers] == pytest.approx(2.25)
    assert units.height[soldiers] == pytest.approx(7.625)


def test_a_band_4_in_high_as_a_rowlock_course_rips_the_course_above() -> None:
    """Closure brick stands in for the rowlock: the same 3-5/8 in. and joint in height."""
    band = {"mark": "B1", "rect": [0, 16, WIDE, 4], "size": "closure", "bond": "stack"}
    layout = lay_out(rectangle(WIDE, 64, "stack", zones=[band]))
    assert layout.trims.height.round(6).tolist() == [round(11 / 12, 6)] * 21
