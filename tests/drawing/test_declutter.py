"""Labels never stand on each other, and move no more than they must."""

from itertools import pairwise

import pytest
from drawings import NAMES, drawn
from hypothesis import given
from hypothesis import strategies as st

from app.drawing.board import Board
from app.drawing.declutter import sparse, spread, that_fit
from app.drawing.marks import Text

PLACES = st.lists(st.floats(0, 100), max_size=12).map(sorted)


@given(PLACES, st.floats(0.5, 9))
def test_spread_labels_are_apart_and_in_order(at: list[float], size: float) -> None:
    places = spread(at, [size] * len(at))
    assert all(right - left >= size - 1e-9 for left, right in pairwise(places))


@given(PLACES)
def test_labels_that_do_not_crowd_stay_where_they_are(at: list[float]) -> None:
    assert spread(at, [0.0] * len(at)) == pytest.approx(at)


def test_two_labels_at_one_place_move_half_each() -> None:
    """Least squares by hand: 10 and 10, 4 apart, are 8 and 12."""
    assert spread([10, 10], [4, 4]) == [8, 12]
    assert spread([10, 10], [2, 6]) == [8, 12]
    assert spread([], []) == []


def test_labels_of_the_lowest_rank_are_kept_when_room_is_short() -> None:
    assert that_fit([0, 2, 1, 2, 0], [3] * 5, 9) == [0, 2, 4]
    assert that_fit([0, 1, 0], [3] * 3, 4) == [0, 2]
    assert that_fit([0, 0], [3, 3], 100) == [0, 1]


def test_sparse_labels_keep_clear_and_do_not_repeat_nearby() -> None:
    assert sparse([0, 1, 5, 5.5, 40], [0, 0, 0, 0, 0], ["a", "b", "a", "b", "a"], 1.5, 20) == [0, 3, 4]


def test_a_board_refuses_what_overlaps_and_takes_what_only_touches() -> None:
    board = Board(2.0, [(0, 0, 4, 1)])
    assert not board.took((3.9, 0.5, 6, 2))
    assert board.took((4, 0, 8, 1))
    assert not board.is_free((7, 0, 9, 0.5))
    assert board.is_free((-5, -5, -1, -1))


def boxes(texts: list[Text], mm: float, stand: bool) -> list[tuple[float, float]]:
    """Extents across the line of labels."""
    half = 0.5 * 2.5 * mm
    return sorted((at - half, at + half) for at in (text.x if stand else text.y for text in texts))


@pytest.mark.parametrize("view", ["elevation", "bed"])
@pytest.mark.parametrize("name", NAMES)
def test_running_dimensions_do_not_overlap(view: str, name: str) -> None:
    drawing = drawn(view, name)
    texts = [mark for mark in drawing.layer("dimensions").marks if isinstance(mark, Text)]
    mm = drawing.scale.inches_per_mm
    left = [text for text in texts if not text.angle and text.x < 0]
    right = [text for text in texts if not text.angle and text.x > 0]
    standing = [text for text in texts if text.angle]
    assert standing
    for group, stand in ((standing, True), (left, False), (right, False)):
        extents = boxes(group, mm, stand)
        assert all(after[0] >= before[1] - 1e-6 for before, after in pairwise(extents))
