"""Marks cut to a window: nothing outside it, nothing lost inside, areas as an independent library clips them."""

import numpy as np
import pytest
import shapely

from app.drawing.marks import Areas, Boxes, Letters, Lines, Text, area, box
from app.drawing.windowed import windowed

WINDOW = (10.0, 5.0, 30.0, 25.0)
FRAME = shapely.box(*WINDOW)
RANDOM = np.random.default_rng(4)


def _boxes(count: int) -> Boxes:
    x, y, wide, high = (RANDOM.uniform(low, up, count) for low, up in ((0, 40), (0, 30), (0.5, 12), (0.5, 12)))
    return Boxes(x, y, wide, high, "whole")


def _polygon() -> list[tuple[float, float]]:
    """A star-shaped ring about a random middle."""
    angles = np.sort(RANDOM.uniform(0, 2 * np.pi, 7))
    reach, (x, y) = RANDOM.uniform(2, 20, 7), RANDOM.uniform((0, 0), (40, 30))
    return [(x + r * np.cos(a), y + r * np.sin(a)) for a, r in zip(angles, reach, strict=True)]


def test_boxes_are_cut_as_shapely_cuts_them() -> None:
    boxes = _boxes(400)
    (cut,) = windowed(boxes, WINDOW)
    columns = zip(boxes.x, boxes.y, boxes.width, boxes.height, strict=True)
    expected = sum(shapely.box(x, y, x + w, y + h).intersection(FRAME).area for x, y, w, h in columns)
    assert float((cut.width * cut.height).sum()) == pytest.approx(expected)  # type: ignore[union-attr]


@pytest.mark.parametrize("_", range(60))
def test_areas_are_cut_as_shapely_cuts_them(_: int) -> None:
    points = _polygon()
    expected = shapely.make_valid(shapely.Polygon(points)).intersection(FRAME).area
    found = 0.0
    for cut in windowed(area(points, "whole"), WINDOW):
        assert isinstance(cut, Areas)
        found = shapely.make_valid(shapely.Polygon(cut.points)).area
        assert (cut.points >= np.array(WINDOW[:2]) - 1e-9).all()
        assert (cut.points <= np.array(WINDOW[2:]) + 1e-9).all()
    assert found == pytest.approx(expected, abs=1e-6)


def test_lines_are_as_long_as_shapely_leaves_them() -> None:
    points = RANDOM.uniform((0, 0), (40, 30), (300, 2))
    expected = shapely.LineString(points).intersection(FRAME).length
    (cut,) = windowed(Lines(points, np.array([len(points)]), "rule"), WINDOW)
    assert isinstance(cut, Lines)
    ends = cut.points.reshape(-1, 2, 2)
    assert np.hypot(*(ends[:, 1] - ends[:, 0]).T).sum() == pytest.approx(expected)


def test_words_are_kept_whole_or_left_out() -> None:
    inside, outside = Text(12, 6, "in", "text"), Text(9, 6, "out", "text")
    assert list(windowed(inside, WINDOW)) == [inside]
    assert list(windowed(outside, WINDOW)) == []
    letters = Letters(np.array([9.0, 12.0, 29.0]), np.array([6.0, 6.0, 26.0]), "LHN", "cut letter")
    (kept,) = windowed(letters, WINDOW)
    assert kept.letters == "H"  # type: ignore[union-attr]


def test_what_lies_outside_leaves_nothing() -> None:
    assert list(windowed(box(40, 40, 5, 5, "whole"), WINDOW)) == []
    assert list(windowed(area([(40, 0), (50, 0), (50, 9)], "whole"), WINDOW)) == []
    assert list(windowed(Lines(np.array([[0.0, 0.0], [0.0, 30.0]]), np.array([2]), "rule"), WINDOW)) == []
