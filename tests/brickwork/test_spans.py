"""A level line in a shape with a hole."""

import shapely

from app.brickwork.spans import level_spans

WITH_HOLE = shapely.box(0, 0, 60, 40) - shapely.box(12, 8, 32, 24)


def test_a_line_stops_at_the_hole_and_goes_on_behind_it() -> None:
    assert level_spans(WITH_HOLE, 16) == [(0, 12), (32, 60)]
    assert level_spans(WITH_HOLE, 30) == [(0, 60)]


def test_beside_the_shape_and_without_one_there_is_none() -> None:
    assert level_spans(WITH_HOLE, 41) == []
    assert level_spans(shapely.Polygon(), 1) == []
