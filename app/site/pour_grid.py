"""The grid on which the vibrator's head goes in: squares over the panel, and a point in each part of one."""

from dataclasses import dataclass
from functools import cached_property
from math import ceil

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from app.panel.tolerance import TOLERANCE
from app.panel.values import Panel
from app.site.places import concrete

Floats = NDArray[np.float64]
Ints = NDArray[np.int64]

HEAD_ROOM = 2.0
"""Inches: no head goes into a strip of concrete narrower than this where a point beside reaches it (common practice:
a pencil head is 1 to 1-1/2 in. thick)."""


@dataclass(frozen=True)
class Grid:
    """Squares of equal sides, at most `grid` inches, over the panel's bounding box; `concrete` is outline less
    openings."""

    panel: Panel
    grid: float

    @cached_property
    def concrete(self) -> BaseGeometry:
        return concrete(self.panel)

    @property
    def columns(self) -> int:
        return max(1, ceil(self.panel.width / self.grid - TOLERANCE))

    @property
    def rows(self) -> int:
        return max(1, ceil(self.panel.height / self.grid - TOLERANCE))

    @property
    def step(self) -> tuple[float, float]:
        """Width and height of a square, inches."""
        return self.panel.width / self.columns, self.panel.height / self.rows

    @cached_property
    def parts(self) -> tuple[NDArray[np.object_], Ints]:
        """The concrete of each square, apart where an opening parts it, and the square of each, row by row."""
        column, row = np.tile(np.arange(self.columns), self.rows), np.repeat(np.arange(self.rows), self.columns)
        wide, high = self.step
        squares = shapely.box(column * wide, row * high, (column + 1) * wide, (row + 1) * high)
        shapely.prepare(self.concrete)
        whole = shapely.contains_properly(self.concrete, squares)
        touched = ~whole & shapely.intersects(self.concrete, squares)
        squares[touched] = shapely.intersection(squares[touched], self.concrete)
        kept = np.flatnonzero(whole | touched)
        parts, owner = shapely.get_parts(squares[kept], return_index=True)
        solid = shapely.area(parts) > TOLERANCE
        return parts[solid], kept[owner[solid]]


def vibrator_points(grid: Grid) -> tuple[Floats, Ints]:
    """A point in each part of each square that holds concrete, inches, and its square.

    The square's middle where that is concrete, so half a square from the form; else the middle of the part, or a point
    of it. Every point of the concrete is within the square's diagonal of a vibrator point, in whole squares within half
    of it. Strips narrower than `HEAD_ROOM` have none of their own where a point beside is within the diagonal.
    """
    parts, square = grid.parts
    if not len(parts):
        return np.zeros((0, 2)), square
    points = _within(parts, _middles(grid, square))
    narrow = _narrow(parts)
    spared = narrow & _reached(parts, points[~narrow], float(np.hypot(*grid.step)))
    return points[~spared], square[~spared]


def _middles(grid: Grid, square: Ints) -> Floats:
    wide, high = grid.step
    return np.column_stack([(square % grid.columns + 0.5) * wide, (square // grid.columns + 0.5) * high])


def _within(parts: NDArray[np.object_], points: Floats) -> Floats:
    """Each point where it is inside its part, else the part's middle where that is, else a point of the part."""
    middles = shapely.get_coordinates(shapely.centroid(parts))
    inner = shapely.get_coordinates(shapely.point_on_surface(parts))
    has_middle = shapely.contains_xy(parts, *middles.T)
    has_point = shapely.contains_xy(parts, *points.T)
    found: Floats = np.where(has_point[:, None], points, np.where(has_middle[:, None], middles, inner))
    return found


def _narrow(parts: NDArray[np.object_]) -> NDArray[np.bool_]:
    x0, y0, x1, y1 = shapely.bounds(parts).T
    narrow: NDArray[np.bool_] = np.minimum(x1 - x0, y1 - y0) < HEAD_ROOM
    return narrow


def _reached(parts: NDArray[np.object_], points: Floats, within: float) -> NDArray[np.bool_]:
    """Whether all corners of a part, and so all of it, are within a distance of the point nearest to its middle."""
    if not len(points):
        return np.zeros(len(parts), dtype=np.bool_)
    nearest = shapely.STRtree(shapely.points(points)).nearest(shapely.centroid(parts))
    corners, owner = shapely.get_coordinates(parts, return_index=True)
    far = np.hypot(*(corners - points[nearest[owner]]).T) > within
    reached: NDArray[np.bool_] = np.bincount(owner[far], minlength=len(parts)) == 0
    return reached
