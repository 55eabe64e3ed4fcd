"""What is left of a sheet on the brick field, kept from layout to layout: an edit changes few sheets."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from app.brickwork.boundary import edges
from app.brickwork.lattice import Floats
from app.liner.cuts import Ring
from app.panel.keyed import Keyed
from app.panel.tolerance import TOLERANCE

_SLANTED_GRID = 1e-9
"""Inches; slanted teeth are clipped on this grid, as nearly equal slants can fail in floats. Level teeth are safe, and
three times faster without."""

_ANY = 1e6
"""A mitre as long as any that two cuts make."""


@dataclass(frozen=True, slots=True)
class Left:
    """Area in square inches, outer rings and holes of what is left of one sheet."""

    area: float
    trim: tuple[Ring, ...]
    holes: tuple[Ring, ...]


@dataclass(frozen=True, slots=True)
class _Clip:
    cover: BaseGeometry
    sheet: shapely.Polygon
    is_slanted: bool


def left_of(cover: BaseGeometry, full: Floats, is_slanted: bool) -> list[Left | None]:
    """For each full sheet, shape (sheets, points, 2), what lies on the cover; None where that is all of it."""
    if not len(full):
        return []
    sheets = shapely.polygons(full)
    shapely.prepare(cover)
    doubtful = np.flatnonzero(~shapely.covers(cover, sheets))
    found: list[Left | None] = [None] * len(full)
    for k, near in zip(doubtful.tolist(), _near(cover, full[doubtful]), strict=True):
        found[k] = _left(Keyed((full[k].tobytes(), near, is_slanted), _Clip(cover, sheets[k], is_slanted)))
    return found


def _near(cover: BaseGeometry, full: Floats) -> Iterator[bytes]:
    """The cover's edges over each sheet's box: all that what is left of it depends on."""
    edge = edges(cover)
    low, high = full.min(axis=1), full.max(axis=1)
    rows = np.column_stack([edge.x0, edge.y0, edge.x1, edge.y1])
    start, end = np.minimum(rows[:, :2], rows[:, 2:]), np.maximum(rows[:, :2], rows[:, 2:])
    over: NDArray[np.bool_] = ((start[None] <= high[:, None]) & (end[None] >= low[:, None])).all(axis=2)
    for chosen in over:
        yield rows[chosen].tobytes()


@lru_cache(maxsize=8192)
def _left(clip: Keyed[_Clip]) -> Left | None:
    given = clip.value
    left = shapely.intersection(given.cover, given.sheet, grid_size=_SLANTED_GRID if given.is_slanted else None)
    parts = _areas_only(left)
    if _has_threads(parts):
        parts = _areas_only(_without_threads(parts))
    area = float(shapely.area(parts).sum())
    if area >= given.sheet.area - TOLERANCE:
        return None
    outer, holes = zip(*(_rings(part) for part in parts), strict=True) if len(parts) else ((), ())
    return Left(area, outer, tuple(hole for some in holes for hole in some))


def _areas_only(left: BaseGeometry) -> NDArray[np.object_]:
    """The polygons of a shape without points, lines, and shreds of no area."""
    parts = shapely.get_parts(shapely.get_parts(left))
    polygons: NDArray[np.object_] = parts[shapely.area(parts) > TOLERANCE]
    return polygons if left.geom_type != "Polygon" else parts


def _has_threads(parts: NDArray[np.object_]) -> bool:
    """Whether an outline runs to and fro on one line, as where the sheet's own edge is a hair past the cover's."""
    points = shapely.get_coordinates(parts)
    return bool((np.abs(points[1:] - points[:-1]).max(axis=1) < 2 * TOLERANCE).any())


def _without_threads(parts: NDArray[np.object_]) -> BaseGeometry:
    """The parts without what is narrower than the tolerance: drawn in by it and let out again."""
    inner = shapely.buffer(shapely.multipolygons(parts), -TOLERANCE, join_style="mitre", mitre_limit=_ANY)
    outer: BaseGeometry = shapely.buffer(inner, TOLERANCE, join_style="mitre", mitre_limit=_ANY)
    return outer


def _rings(part: shapely.Polygon) -> tuple[Ring, tuple[Ring, ...]]:
    outer, *holes = ([(x, y) for x, y in ring.coords[:-1]] for ring in shapely.get_rings(part))
    return tuple(outer), tuple(tuple(hole) for hole in holes)
