"""Seams of liner sheets: all of them, each once."""

import numpy as np
import pytest
import shapely
from drawings import NAMES, liner_of

from app.drawing.seams import seams

SQUARE = ((0.0, 0.0), (4.0, 0.0), (4.0, 2.0), (0.0, 2.0))
BESIDE = ((4.0, 0.0), (8.0, 0.0), (8.0, 2.0), (4.0, 2.0))
ABOVE = ((1.0, 2.0), (6.0, 2.0), (6.0, 3.0), (1.0, 3.0))


def lines_of(rings: list[tuple[tuple[float, float], ...]]) -> list[shapely.LineString]:
    found = seams(rings)
    ends = np.cumsum(found.count)
    return [shapely.LineString(found.points[end - count : end]) for end, count in zip(ends, found.count, strict=True)]


def test_a_shared_edge_is_drawn_once() -> None:
    """
    +----+----+
    |    |    |   two squares: 7 edges, 4+4+2+2+2 and the one between
    +----+----+
    """
    assert sum(line.length for line in lines_of([SQUARE, BESIDE])) == pytest.approx(4 * 4 + 3 * 2)


def test_level_edges_that_overlap_in_part_are_drawn_once() -> None:
    found = lines_of([SQUARE, BESIDE, ABOVE])
    assert sum(line.length for line in found) == pytest.approx(22 + 5 + 1 + 1)


def test_no_rings_give_no_lines() -> None:
    assert len(seams([]).count) == 0


@pytest.mark.parametrize("name", NAMES)
def test_seams_cover_every_sheet_s_edge_and_nothing_else(name: str) -> None:
    """The union by GEOS of all edges has the same length, and lies on the seams."""
    plan, _ = liner_of(name)
    rings = [ring for sheet in plan.sheets for ring in (*sheet.trim, *sheet.holes)]
    union = shapely.union_all([shapely.LinearRing(ring) for ring in rings], grid_size=1e-3)
    found = lines_of(rings)
    assert shapely.union_all(found, grid_size=1e-3).length == pytest.approx(union.length, rel=1e-4)
    assert sum(line.length for line in found) == pytest.approx(union.length, rel=1e-3)
