"""Flemish and English bond as defined, measured on laid faces.

Source: bond definitions in a pocket guide of a US masonry institute, 2012: Flemish bond, headers and stretchers by
turns in every course, the header centred on the stretcher below; English bond, courses of headers and of stretchers
by turns, the headers centred on the stretchers and on the joints between them. Values are arithmetic: repeat L + W +
2j = 12 in. modular, lap a quarter unit; a header's face is the half bat, 3-5/8 in.
"""

import numpy as np
import pytest
from shapes import rectangle

from app.brickwork.bond import KINDS
from app.brickwork.layout import Layout, lay_out

HEADER, STRETCHER = KINDS.index("header"), KINDS.index("stretcher")


def _middles(layout: Layout, course: int, kind: int) -> np.ndarray:
    """Middles of the whole units of one kind in one course, left to right, inches."""
    u = layout.units
    chosen = (u.course == course) & (u.kind == kind) & ~u.is_trimmed
    return np.sort(u.x[chosen] + u.width[chosen] / 2)


def _face(bond: str) -> Layout:
    return lay_out(rectangle(144, 48, bond))


def _nearest(points: np.ndarray, middle: float) -> float:
    return float(np.abs(points - middle).min())


@pytest.mark.parametrize("course", range(1, 16))
def test_a_flemish_header_is_centred_on_the_stretcher_below(course: int) -> None:
    layout = _face("flemish")
    headers, below = _middles(layout, course, HEADER), _middles(layout, course - 1, STRETCHER)
    inner = headers[(headers > 12) & (headers < 132)]
    assert len(inner) >= 9
    assert max(_nearest(below, middle) for middle in inner) < 1e-9


def test_a_flemish_course_repeats_every_12_in_with_one_header_and_one_stretcher() -> None:
    layout = _face("flemish")
    for kind in (HEADER, STRETCHER):
        assert np.diff(_middles(layout, 4, kind)) == pytest.approx(12)


def test_flemish_head_joints_lap_a_quarter_unit() -> None:
    """From the end of a stretcher to the end of the header above it: 2 in., a quarter of 8."""
    layout = _face("flemish")
    headers, below = _middles(layout, 5, HEADER), _middles(layout, 4, STRETCHER)
    middle = headers[5]
    stretcher = below[np.abs(below - middle).argmin()]
    assert (stretcher + 7.625 / 2) - (middle + 3.625 / 2) == pytest.approx(2)


def test_english_headers_are_centred_on_stretchers_and_on_their_joints() -> None:
    layout = _face("english")
    headers, below = _middles(layout, 1, HEADER), _middles(layout, 0, STRETCHER)
    joints = below + 7.625 / 2 + 0.375 / 2
    inner = headers[(headers > 8) & (headers < 136)]
    assert {min(_nearest(below, m), _nearest(joints, m)) < 1e-9 for m in inner} == {True}
    assert np.diff(inner) == pytest.approx(4)


def test_english_courses_are_all_headers_or_all_stretchers_by_turns() -> None:
    layout = _face("english")
    for course in range(18):
        kinds = set(layout.units.kind[layout.units.course == course].tolist())
        assert kinds == {STRETCHER if course % 2 == 0 else HEADER}


@pytest.mark.parametrize("bond", ["flemish", "english", "common-6"])
def test_a_header_shows_a_half_bat_of_3_and_five_eighths(bond: str) -> None:
    u = _face(bond).units
    assert u.width[(u.kind == HEADER) & ~u.is_trimmed] == pytest.approx(3.625)
