"""Where a trimmed sheet is cut, measured from its own starting corner."""

from dataclasses import dataclass
from itertools import pairwise
from math import hypot

import shapely

from app.panel.tolerance import TOLERANCE

Ring = tuple[tuple[float, float], ...]
"""Corners in order, the first not repeated."""

_ON_EDGE = 10 * TOLERANCE
"""Inches; nearer than this to the sheet's own edge is no cut."""


@dataclass(frozen=True, slots=True)
class Cut:
    """One straight cut of a sheet, ends measured from the sheet's own starting corner, away from it and up from it.

    `axis` is "x" for an upright cut, "y" for a level one, "skew" for any other; `at` is how far an upright or level
    cut is from that corner, for a skew cut how far its first end is. Inches.
    """

    axis: str
    at: float
    start: tuple[float, float]
    end: tuple[float, float]


def cuts(outline: Ring, rings: tuple[Ring, ...], away: tuple[int, int]) -> tuple[Cut, ...]:
    """The sides of what is left of a sheet that do not run along its own edge, ring by ring.

    `outline` is the full sheet; `away` says which way (1 or -1, right and up) sheets follow on from the starting
    corner, which for a toothed sheet is the corner of its bounding box. Face frame, inches. None for a full sheet.
    """
    corner = tuple(min(point[axis] * away[axis] for point in outline) for axis in (0, 1))
    ends = [side for ring in rings for side in pairwise((*ring, ring[0]))]
    middles = shapely.points([((x0 + x1) / 2, (y0 + y1) / 2) for (x0, y0), (x1, y1) in ends])
    distances = shapely.distance(middles, shapely.LinearRing(outline)).tolist()
    own = [
        tuple((x * away[0] - corner[0], y * away[1] - corner[1]) for x, y in side)
        for side, distance in zip(ends, distances, strict=True)
        if distance > _ON_EDGE
    ]
    return tuple(straight_cut(start, end) for start, end in own)


def straight_cut(start: tuple[float, float], end: tuple[float, float]) -> Cut:
    """The cut from one point to another, inches from the sheet's starting corner."""
    if abs(end[0] - start[0]) <= TOLERANCE:
        return Cut("x", start[0], start, end)
    if abs(end[1] - start[1]) <= TOLERANCE:
        return Cut("y", start[1], start, end)
    return Cut("skew", hypot(*start), start, end)
