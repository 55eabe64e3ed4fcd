"""The upright and level edges of a brick field, its square corners, and which upright edges face each other."""

from dataclasses import dataclass

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from app.brickwork.lattice import Flags, Floats, Ints
from app.panel.tolerance import TOLERANCE


@dataclass(frozen=True, slots=True)
class Uprights:
    """Upright edges at x from y0 to y1, inches; `right` where the brick is on their right."""

    x: Floats
    y0: Floats
    y1: Floats
    right: Flags


@dataclass(frozen=True, slots=True)
class Levels:
    """Level edges at y from x0 to x1, inches; `above` where the brick is above them."""

    x0: Floats
    x1: Floats
    y: Floats
    above: Flags


@dataclass(frozen=True, slots=True)
class Corners:
    """Corners between an upright and a level edge; `outer` where the brick has a quarter of the plane, not three."""

    x: Floats
    y: Floats
    right: Flags
    above: Flags
    outer: Flags


@dataclass(frozen=True, slots=True)
class Pairs:
    """Two upright edges at x0 and x1 with nothing between over y0 to y1: a pier, or else the jambs of an opening."""

    x0: Floats
    x1: Floats
    y0: Floats
    y1: Floats
    pier: Flags


@dataclass(frozen=True, slots=True)
class Edging:
    """Everything of a brick field's boundary that cuts courses squarely."""

    uprights: Uprights
    levels: Levels
    corners: Corners
    pairs: Pairs


def edging(field: BaseGeometry) -> Edging:
    """The square edges of a brick field, inches, face frame; slanted edges are not among them. Empty for no field."""
    points, after = _turning_points(field)
    end = points[after]
    run, rise = (end - points).T
    upright, level = np.abs(run) <= TOLERANCE, np.abs(rise) <= TOLERANCE
    low, high = np.minimum(points, end), np.maximum(points, end)
    return Edging(
        Uprights(points[upright, 0], low[upright, 1], high[upright, 1], rise[upright] < 0),
        Levels(low[level, 0], high[level, 0], points[level, 1], run[level] > 0),
        _corners(points, after, run, rise),
        _pairs(points[~level], end[~level]),
    )


def _turning_points(field: BaseGeometry) -> tuple[Floats, Ints]:
    """Points of all rings, the field on their left, less those on a straight upright or level run; and what follows."""
    rings = shapely.get_rings(shapely.orient_polygons(shapely.get_parts(field)))
    points, ring = shapely.get_coordinates(rings, return_index=True)
    kept = np.append(ring[1:] == ring[:-1], False)[: len(points)]
    points, ring = points[kept], ring[kept]
    before, after = _beside(ring)
    to = np.abs(points - points[before]) <= TOLERANCE
    on = np.abs(points[after] - points) <= TOLERANCE
    turns = ~(to & on).any(axis=1)
    return points[turns], _beside(ring[turns])[1]


def _beside(ring: Ints) -> tuple[Ints, Ints]:
    """Index of the point before and of the point after each, round its ring."""
    here = np.arange(len(ring))
    first, last = np.searchsorted(ring, ring, "left"), np.searchsorted(ring, ring, "right") - 1
    return np.where(here == first, last, here - 1), np.where(here == last, first, here + 1)


def _corners(points: Floats, after: Ints, run: Floats, rise: Floats) -> Corners:
    upright, level = np.abs(run) <= TOLERANCE, np.abs(rise) <= TOLERANCE
    square = (upright & level[after]) | (level & upright[after])
    one, two = np.flatnonzero(square), after[square]
    riser, runner = np.where(upright[one], one, two), np.where(upright[one], two, one)
    outer = run[one] * rise[two] - rise[one] * run[two] > 0
    return Corners(points[two, 0], points[two, 1], rise[riser] < 0, run[runner] > 0, outer)


def _pairs(start: Floats, end: Floats) -> Pairs:
    """Upright edges next to each other in a slab between two neighbouring heights, over as many slabs as they are."""
    low, high = np.minimum(start[:, 1], end[:, 1]), np.maximum(start[:, 1], end[:, 1])
    heights = _distinct(np.concatenate([low, high]))
    middle = (heights[:-1] + heights[1:]) / 2
    slab, edge = np.nonzero((low < middle[:, None]) & (high > middle[:, None]))
    run, rise = (end - start).T
    x = start[edge, 0] + (middle[slab] - start[edge, 1]) * run[edge] / rise[edge]
    order = np.lexsort((x, slab))
    slab, edge = slab[order], edge[order]
    upright = np.abs(run) <= TOLERANCE
    facing = (slab[1:] == slab[:-1]) & upright[edge[1:]] & upright[edge[:-1]]
    left, right, slab = edge[:-1][facing], edge[1:][facing], slab[:-1][facing]
    first, last = _stretches(left, right, slab)
    left, right, bottom, top = left[first], right[first], heights[slab[first]], heights[slab[last] + 1]
    return Pairs(start[left, 0], start[right, 0], bottom, top, rise[left] < 0)


def _stretches(left: Ints, right: Ints, slab: Ints) -> tuple[Ints, Ints]:
    """First and last entry of every run of neighbouring slabs with the same two edges."""
    order = np.lexsort((slab, right, left))
    one, two = order[:-1], order[1:]
    goes_on = (left[one] == left[two]) & (right[one] == right[two]) & (slab[two] == slab[one] + 1)
    starts, ends = np.append(True, ~goes_on)[: len(order)], np.append(~goes_on, True)[: len(order)]
    return order[starts], order[ends]


def _distinct(values: Floats) -> Floats:
    ordered = np.sort(values)
    distinct: Floats = ordered[np.append(True, np.diff(ordered) > TOLERANCE)[: len(ordered)]]
    return distinct
