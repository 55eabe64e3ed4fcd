"""Which units the boundary of a region touches, and which of the others are inside it."""

from dataclasses import dataclass

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from app.brickwork.lattice import Flags, Floats, Grid, Ints, lattice_box, line_range, runs, unit_range
from app.panel.tolerance import TOLERANCE


@dataclass(frozen=True, slots=True)
class Edges:
    """Directed boundary edges, the region always on the left; `after` is the edge that follows in the ring."""

    x0: Floats
    y0: Floats
    x1: Floats
    y1: Floats
    after: Ints

    @property
    def upright(self) -> Flags:
        return np.abs(self.x1 - self.x0) <= TOLERANCE

    @property
    def level(self) -> Flags:
        return np.abs(self.y1 - self.y0) <= TOLERANCE


def edges(region: BaseGeometry) -> Edges:
    """The edges of a polygon or multipolygon; none for an empty region."""
    rings = shapely.get_rings(shapely.orient_polygons(shapely.get_parts(region)))
    points, owner = shapely.get_coordinates(rings, return_index=True)
    starts = np.flatnonzero(owner[1:] == owner[:-1]) if len(points) else np.zeros(0, dtype=np.int64)
    after = np.arange(len(starts)) + 1
    if len(starts):
        ring = owner[starts]
        first = np.searchsorted(ring, ring)
        last = np.append(ring[1:] != ring[:-1], True)
        after = np.where(last, first, after)
    return Edges(points[starts, 0], points[starts, 1], points[starts + 1, 0], points[starts + 1, 1], after)


def touches(grid: Grid, edge: Edges) -> tuple[Ints, Ints]:
    """Pairs (edge, unit) in which the edge passes through the inside of the unit's box."""
    x0, x1 = np.minimum(edge.x0, edge.x1), np.maximum(edge.x0, edge.x1)
    y0, y1 = np.minimum(edge.y0, edge.y1), np.maximum(edge.y0, edge.y1)
    grown = (x0 - 2 * TOLERANCE, y0 - 2 * TOLERANCE, x1 + 2 * TOLERANCE, y1 + 2 * TOLERANCE)
    grown = lattice_box(grid.lat, grown)
    cells = len(grid.lat.x)
    which = np.repeat(np.arange(len(x0)), cells)
    cell = np.tile(np.arange(cells), len(x0))
    from_j, count = line_range(grid.lat, cell, _take(grown, which))
    pair, rank = runs(count)
    which, cell, j = which[pair], cell[pair], (from_j[pair] + rank)
    line = grid.line(cell, j)
    known = line >= 0
    which, cell, j, line = which[known], cell[known], j[known], line[known]
    from_i, count = unit_range(grid.lat, cell, j, _take(grown, which))
    last = np.minimum(from_i + count, grid.start[line] + grid.count[line])
    from_i = np.maximum(from_i, grid.start[line])
    pair, rank = runs(np.maximum(last - from_i, 0))
    unit = grid.first[line][pair] + (from_i - grid.start[line])[pair] + rank
    which = which[pair]
    passing = _passes_through(grid, edge, which, unit)
    return which[passing], unit[passing]


def _take(box: tuple[Floats, Floats, Floats, Floats], which: Ints) -> tuple[Floats, Floats, Floats, Floats]:
    return box[0][which], box[1][which], box[2][which], box[3][which]


def _passes_through(grid: Grid, edge: Edges, which: Ints, unit: Ints) -> Flags:
    """Whether the segment crosses the open box (shrunk by the tolerance), by clipping it to the box's two slabs."""
    near, far = np.zeros(len(which)), np.ones(len(which))
    for start, end, low, high in (
        (edge.x0[which], edge.x1[which], grid.x0[unit], grid.x1[unit]),
        (edge.y0[which], edge.y1[which], grid.y0[unit], grid.y1[unit]),
    ):
        low, high, run = low + TOLERANCE, high - TOLERANCE, end - start
        flat = np.abs(run) <= TOLERANCE
        safe = np.where(flat, 1.0, run)
        a, b = (low - start) / safe, (high - start) / safe
        between = (start > low) & (start < high)
        near = np.maximum(near, np.where(flat, np.where(between, 0.0, 2.0), np.minimum(a, b)))
        far = np.minimum(far, np.where(flat, 1.0, np.maximum(a, b)))
    passing: Flags = near < far
    return passing


def inside(grid: Grid, edge: Edges, region: BaseGeometry) -> Flags:
    """Whether each unit's centre is in the region; meant for units that no edge touches."""
    if grid.lat.is_level and not grid.lat.is_stretched:
        return _inside_by_crossings(grid, edge)
    shapely.prepare(region)
    within: Flags = shapely.contains_xy(region, (grid.x0 + grid.x1) / 2, (grid.y0 + grid.y1) / 2)
    return within


def _inside_by_crossings(grid: Grid, edge: Edges) -> Flags:
    """Even-odd rule along each level line: count the boundary crossings to the left of each unit's centre."""
    lat = grid.lat
    low, high = np.minimum(edge.y0, edge.y1), np.maximum(edge.y0, edge.y1)
    cells = len(lat.x)
    which = np.repeat(np.arange(len(low)), cells)
    cell = np.tile(np.arange(cells), len(low))
    middle = lat.y[cell] + lat.height[cell] / 2
    from_j = np.ceil((low[which] - middle) / lat.up[1]).astype(np.int64)
    to_j = np.ceil((high[which] - middle) / lat.up[1]).astype(np.int64)
    pair, rank = runs(to_j - from_j)
    which, cell, j = which[pair], cell[pair], from_j[pair] + rank
    line = grid.line(cell, j)
    known = line >= 0
    which, cell, j, line = which[known], cell[known], j[known], line[known]
    y = lat.y[cell] + lat.height[cell] / 2 + j * lat.up[1]
    x = edge.x0[which] + (y - edge.y0[which]) * (edge.x1 - edge.x0)[which] / (edge.y1 - edge.y0)[which]
    centre = lat.x[cell] + j * lat.up[0] + lat.width[cell] / 2
    i = np.ceil((x - centre) / lat.across[0]).astype(np.int64)
    at = grid.first[line] + np.clip(i - grid.start[line], 0, grid.count[line])
    crossings = np.bincount(at, minlength=len(grid.x0) + 1)[: len(grid.x0)]
    odd: Flags = np.cumsum(crossings) % 2 == 1
    return odd
