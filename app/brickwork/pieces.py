"""Pieces that the boundary of a region leaves of the units it touches.

Arithmetic for straight cuts, single corners and single slanted cuts; GEOS only for what is left: units at the ends of
slanted edges and along curves, and the rare unit with several corners in it.
"""

from dataclasses import dataclass

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from app.brickwork.boundary import Edges
from app.brickwork.lattice import Flags, Floats, Grid, Ints
from app.brickwork.slants import sliced
from app.panel.tolerance import TOLERANCE


@dataclass(frozen=True, slots=True)
class Pieces:
    """Outlines of pieces, ring after ring (not closed), and the grid's unit that each is cut from."""

    unit: Ints
    count: Ints
    points: Floats

    @property
    def first(self) -> Ints:
        """Index of each piece's first point."""
        return np.cumsum(self.count) - self.count

    def ring(self, piece: int) -> Floats:
        """The outline of one piece, shape (points, 2), inches."""
        start = int(self.first[piece])
        return self.points[start : start + int(self.count[piece])]

    def take(self, chosen: Flags) -> "Pieces":
        """The chosen pieces only."""
        return Pieces(self.unit[chosen], self.count[chosen], self.points[np.repeat(chosen, self.count)])


def join(parts: list[Pieces]) -> Pieces:
    """All pieces of all parts, in order."""
    return Pieces(
        np.concatenate([part.unit for part in parts]),
        np.concatenate([part.count for part in parts]),
        np.concatenate([part.points for part in parts]),
    )


def bounds(pieces: Pieces) -> tuple[Floats, Floats, Floats, Floats]:
    """Bounding boxes (x0, y0, x1, y1) of the pieces, inches; empty arrays for none."""
    if not len(pieces.unit):
        none = np.zeros(0)
        return none, none, none, none
    first = pieces.first
    x, y = np.ascontiguousarray(pieces.points.T)
    low_x, low_y = np.minimum.reduceat(x, first), np.minimum.reduceat(y, first)
    return low_x, low_y, np.maximum.reduceat(x, first), np.maximum.reduceat(y, first)


def areas(pieces: Pieces) -> Floats:
    """Areas of the pieces, square inches (shoelace about each piece's own first point)."""
    if not len(pieces.unit):
        return np.zeros(0)
    first = pieces.first
    points = pieces.points - np.repeat(pieces.points[first], pieces.count, axis=0)
    following = np.arange(len(points)) + 1
    following[first + pieces.count - 1] = first
    x, y = points[:, 0], points[:, 1]
    return np.abs(np.add.reduceat(x * y[following] - x[following] * y, first)) / 2


def cut(grid: Grid, edge: Edges, region: BaseGeometry, which: Ints, unit: Ints) -> Pieces:
    """The parts inside `region` of every unit in the pairs (edge, unit) of `boundary.touches`."""
    order = np.lexsort((which, unit))
    which, unit = which[order], unit[order]
    straight, corner, slanted, other = _sorted_by_cut(grid, edge, which, unit)
    return join(
        [
            _straight(grid, edge, which[straight], unit[straight]),
            _corners(grid, edge, which[corner], unit[corner]),
            Pieces(*sliced(grid, edge, which[slanted], unit[slanted])),
            _clipped(grid, region, np.unique(unit[other])),
        ]
    )


def _sorted_by_cut(grid: Grid, edge: Edges, which: Ints, unit: Ints) -> tuple[Flags, Flags, Flags, Flags]:
    """Of the pairs, sorted by unit: those of units cut right through in one direction, of units with one corner in
    them, of units with one slanted cut right through, and the rest."""
    if not len(unit):
        none = np.zeros(0, dtype=np.bool_)
        return none, none, none, none
    upright, level = edge.upright[which], edge.level[which]
    start_in, end_in = (
        _is_in(grid, unit, edge.x0[which], edge.y0[which]),
        _is_in(grid, unit, edge.x1[which], edge.y1[which]),
    )
    through = ~start_in & ~end_in
    head = np.flatnonzero(np.append(True, unit[1:] != unit[:-1]))
    size = np.diff(np.append(head, len(unit)))

    def all_of(flags: Flags) -> Flags:
        return np.logical_and.reduceat(flags, head)

    straight = all_of(through & upright) | all_of(through & level)
    pair = np.minimum(head + 1, len(unit) - 1)
    follows = (edge.after[which[head]] == which[pair]) | (edge.after[which[pair]] == which[head])
    one_end = all_of((upright | level) & (start_in ^ end_in))
    corner = (size == 2) & follows & one_end & (upright[head] != upright[pair])
    slanted = (size == 1) & through[head] & ~straight
    owner = np.repeat(np.arange(len(head)), size)
    return straight[owner], corner[owner], slanted[owner], ~(straight | corner | slanted)[owner]


def _is_in(grid: Grid, unit: Ints, x: Floats, y: Floats) -> Flags:
    """Whether points are inside their unit's box by more than the tolerance."""
    t = TOLERANCE
    across = (x > grid.x0[unit] + t) & (x < grid.x1[unit] - t)
    return across & (y > grid.y0[unit] + t) & (y < grid.y1[unit] - t)


def _boxes(unit: Ints, x0: Floats, y0: Floats, x1: Floats, y1: Floats) -> Pieces:
    points = np.stack([x0, y0, x1, y0, x1, y1, x0, y1], axis=-1).reshape(-1, 2)
    return Pieces(unit, np.full(len(unit), 4), points)


def _straight(grid: Grid, edge: Edges, which: Ints, unit: Ints) -> Pieces:
    """Pieces between cuts that run right through their unit, all upright or all level in one unit."""
    upright = edge.upright[which]
    across = _between(grid.x0, grid.x1, edge.x0, edge.y1 < edge.y0, which[upright], unit[upright])
    along = _between(grid.y0, grid.y1, edge.y0, edge.x1 > edge.x0, which[~upright], unit[~upright])
    return join(
        [
            _boxes(across[0], across[1], grid.y0[across[0]], across[2], grid.y1[across[0]]),
            _boxes(along[0], grid.x0[along[0]], along[1], grid.x1[along[0]], along[2]),
        ]
    )


def _between(
    low: Floats, high: Floats, position: Floats, opens: Flags, which: Ints, unit: Ints
) -> tuple[Ints, Floats, Floats]:
    """Intervals inside the region: a cut that `opens` has it on its far side; it lasts to the next cut or the end."""
    order = np.lexsort((position[which], unit))
    which, unit, at = which[order], unit[order], position[which[order]]
    starts = opens[which]
    same_next = np.append(unit[1:] == unit[:-1], False)
    following = np.append(at[1:], 0.0)
    until = np.where(same_next, following, high[unit])
    first = np.append(True, ~same_next[:-1]) if len(unit) else np.zeros(0, dtype=np.bool_)
    ends_first = first & ~starts
    return (
        np.concatenate([unit[starts], unit[ends_first]]),
        np.concatenate([at[starts], low[unit[ends_first]]]),
        np.concatenate([until[starts], at[ends_first]]),
    )


def _corners(grid: Grid, edge: Edges, which: Ints, unit: Ints) -> Pieces:
    """Units with one right-angled corner of the boundary in them: a smaller box, or an L where the corner bites."""
    one, two, owner = which[0::2], which[1::2], unit[0::2]
    swapped = edge.after[two] == one
    came, goes = np.where(swapped, two, one), np.where(swapped, one, two)
    cx, cy = edge.x1[came], edge.y1[came]
    along_came = _direction(edge, came)
    along_goes = _direction(edge, goes)
    turns_left = along_came[0] * along_goes[1] - along_came[1] * along_goes[0] > 0
    # The quarter of the box between the two edges: towards the start of `came` and the end of `goes`.
    right = (along_goes[0] - along_came[0]) > 0
    top = (along_goes[1] - along_came[1]) > 0
    x0, y0, x1, y1 = grid.x0[owner], grid.y0[owner], grid.x1[owner], grid.y1[owner]
    kept = turns_left
    boxes = _boxes(
        owner[kept],
        np.where(right, cx, x0)[kept],
        np.where(top, cy, y0)[kept],
        np.where(right, x1, cx)[kept],
        np.where(top, y1, cy)[kept],
    )
    bitten = ~kept
    ells = _ells(
        owner[bitten],
        (x0[bitten], y0[bitten], x1[bitten], y1[bitten]),
        (cx[bitten], cy[bitten]),
        right[bitten],
        top[bitten],
    )
    return join([boxes, ells])


def _direction(edge: Edges, which: Ints) -> tuple[Floats, Floats]:
    return np.sign(np.round(edge.x1 - edge.x0, 6))[which], np.sign(np.round(edge.y1 - edge.y0, 6))[which]


def _ells(
    unit: Ints, box: tuple[Floats, Floats, Floats, Floats], corner: tuple[Floats, Floats], right: Flags, top: Flags
) -> Pieces:
    """L shapes: the box less its quarter beyond the corner on the `right` / left and `top` / bottom."""
    (x0, y0, x1, y1), (cx, cy) = box, corner
    bitten_x, far_x = np.where(right, x1, x0), np.where(right, x0, x1)
    bitten_y, far_y = np.where(top, y1, y0), np.where(top, y0, y1)
    points = np.stack(
        [far_x, far_y, bitten_x, far_y, bitten_x, cy, cx, cy, cx, bitten_y, far_x, bitten_y], axis=-1
    ).reshape(-1, 6, 2)
    clockwise = right != top
    points[clockwise] = points[clockwise, ::-1]
    return Pieces(unit, np.full(len(unit), 6), points.reshape(-1, 2))


def _clipped(grid: Grid, region: BaseGeometry, unit: Ints) -> Pieces:
    """Whatever GEOS leaves of these units; points and lines that it may leave are dropped."""
    if not len(unit):
        return Pieces(unit, np.zeros(0, dtype=np.int64), np.zeros((0, 2)))
    boxes = shapely.box(grid.x0[unit], grid.y0[unit], grid.x1[unit], grid.y1[unit])
    parts, owner = shapely.get_parts(shapely.intersection(boxes, region), return_index=True)
    solid = (shapely.get_dimensions(parts) == 2) & (shapely.area(parts) > TOLERANCE)
    parts, owner = shapely.orient_polygons(parts[solid]), owner[solid]
    for holed in np.flatnonzero(shapely.get_num_interior_rings(parts)):
        parts[holed] = _slit(parts[holed])
    rings = shapely.get_exterior_ring(parts)
    points = shapely.get_coordinates(rings)
    count = shapely.get_num_coordinates(rings)
    kept = np.ones(len(points), dtype=np.bool_)
    kept[np.cumsum(count) - 1] = False
    return Pieces(unit[owner], count - 1, points[kept])


def _slit(part: shapely.Polygon) -> shapely.Polygon:
    """A piece with holes as one ring: the outline goes in to each hole and back the same way, as the saw does."""
    ring = shapely.get_coordinates(part.exterior)[:-1]
    for hole in part.interiors:
        around = shapely.get_coordinates(hole)[:-1]
        gaps = np.hypot(*(ring[:, None, :] - around[None, :, :]).transpose(2, 0, 1))
        near, first = np.unravel_index(int(gaps.argmin()), gaps.shape)
        way_in = np.roll(around, -int(first), axis=0)
        ring = np.vstack([ring[: near + 1], way_in, way_in[:1], ring[near:]])
    return shapely.Polygon(ring)
