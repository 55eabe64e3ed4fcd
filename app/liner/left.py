"""What is left of sheets on the brick field, many sheets at once."""

from dataclasses import dataclass

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from app.brickwork.lattice import Ints
from app.liner.cuts import Ring
from app.liner.trims import Shapes
from app.panel.rings import from_least
from app.panel.tolerance import TOLERANCE

_SLANTED_GRID = 1e-9
"""Inches; slanted teeth are clipped on this grid, as nearly equal slants can fail in floats. Level teeth are safe, and
three times faster without."""

_ANY = 1e6
"""A mitre as long as any that two cuts make."""

_POLYGON = 3
"""GEOS's number of the type."""


@dataclass(frozen=True, slots=True)
class Left:
    """Area in square inches, outer rings and holes of what is left of one sheet."""

    area: float
    trim: tuple[Ring, ...]
    holes: tuple[Ring, ...]


def left_of(cover: BaseGeometry, sheets: Shapes, is_slanted: bool) -> list[Left | None]:
    """For each full sheet what lies on the cover; None where that is all of it, an empty list for no sheets."""
    clips = shapely.intersection(cover, sheets, grid_size=_SLANTED_GRID if is_slanted else None)
    parts, owner = _areas_only(clips)
    threads = np.unique(owner[_has_threads(parts)]).tolist()
    for k in threads:
        clips[k] = _without_threads(parts[owner == k])
    if threads:
        parts, owner = _areas_only(clips)
    areas = np.bincount(owner, shapely.area(parts), minlength=len(sheets))
    is_whole = areas >= shapely.area(sheets) - TOLERANCE
    rings = _rings(parts[~is_whole[owner]], owner[~is_whole[owner]], len(sheets))
    rows = zip(areas.tolist(), is_whole.tolist(), rings, strict=True)
    return [None if whole else Left(area, tuple(trim), tuple(holes)) for area, whole, (trim, holes) in rows]


def _areas_only(clips: Shapes) -> tuple[Shapes, Ints]:
    """The polygons of shapes without points, lines, and shreds of no area, and the place of the shape each is of."""
    some, owner = shapely.get_parts(clips, return_index=True)
    parts, at = shapely.get_parts(some, return_index=True)
    owner = owner[at]
    is_alone = shapely.get_type_id(clips)[owner] == _POLYGON
    kept = (shapely.area(parts) > TOLERANCE) | (is_alone & ~shapely.is_empty(parts))
    return parts[kept], owner[kept]


def _has_threads(parts: Shapes) -> NDArray[np.bool_]:
    """Whether an outline runs to and fro on one line, as where the sheet's own edge is a hair past the cover's."""
    points, owner = shapely.get_coordinates(parts, return_index=True)
    is_near = np.abs(points[1:] - points[:-1]).max(axis=1, initial=0.0) < 2 * TOLERANCE
    found = np.zeros(len(parts), dtype=np.bool_)
    found[owner[1:][is_near]] = True
    return found


def _without_threads(parts: Shapes) -> BaseGeometry:
    """The parts without what is narrower than the tolerance: drawn in by it and let out again."""
    inner = shapely.buffer(shapely.multipolygons(parts), -TOLERANCE, join_style="mitre", mitre_limit=_ANY)
    outer: BaseGeometry = shapely.buffer(inner, TOLERANCE, join_style="mitre", mitre_limit=_ANY)
    return outer


def _rings(parts: Shapes, owner: Ints, count: int) -> list[tuple[list[Ring], list[Ring]]]:
    """Outer rings and holes of the parts of each of so many shapes, the same for the same parts however they came."""
    found: list[tuple[list[Ring], list[Ring]]] = [([], []) for _ in range(count)]
    rings, part = shapely.get_rings(parts, return_index=True)
    points = list(map(tuple, shapely.get_coordinates(rings).tolist()))
    ends = np.cumsum(shapely.get_num_coordinates(rings)).tolist()
    is_hole = np.append(False, part[1:] == part[:-1])[: len(part)].tolist()
    for k, start, end, hole in zip(owner[part].tolist(), [0, *ends], ends, is_hole, strict=False):
        found[k][hole].append(from_least(points[start : end - 1]))
    return [(sorted(outer), sorted(holes)) for outer, holes in found]
