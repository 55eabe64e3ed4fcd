"""Closers: what ends a course instead of a piece below the least.

A stretcher and the small piece beside it become a half bat at the end and a three-quarter next to it; a header and the
small piece become one three-quarter. At jambs no piece smaller than the unit's width: use a half and a three-quarter
(Masonry Construction magazine, *Bricking around openings*).
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace

import numpy as np

from app.brickwork.cuts import CUTS, Sorting
from app.brickwork.lattice import Flags, Floats, Grid, Ints
from app.brickwork.pieces import Pieces, bounds, join
from app.panel.size import BrickSize
from app.panel.tolerance import TOLERANCE

_NEAR = 0.1
"""Inches: a neighbour starts a joint away, give or take what joints may give."""


@dataclass(frozen=True, slots=True)
class _Pair:
    """A small end piece by its place in the trims, the whole unit beside it, and from where to where both lie."""

    trim: int
    unit: int
    neighbour: int
    low: float
    high: float
    ends_left: bool


@dataclass(frozen=True, slots=True)
class _New:
    """A piece of a unit from x0 to x1, inches."""

    unit: int
    x0: float
    x1: float


def closed(grid: Grid, whole: Ints, sorting: Sorting, size: BrickSize, least: float) -> tuple[Ints, Sorting]:
    """Whole units and trims of a level bond with closers at the ends of courses.

    A piece stays as it is where no whole unit is beside it, or both together are too short for two pieces of the least
    length and too long for one unit. Inches; nothing changes where nothing is small.
    """
    if not len(whole):
        return whole, sorting
    half = max(least, size.half_bat)
    taken, used, made = [], set[int](), list[_New]()
    for pair in _pairs(grid, whole, sorting, size.head_joint.inches):
        pieces = _shared(pair, size, half)
        if pieces and pair.neighbour not in used:
            taken.append(pair.trim)
            used.add(pair.neighbour)
            made += pieces
    if not made:
        return whole, sorting
    return whole[~np.isin(whole, list(used))], _with(grid, sorting, taken, made, least)


def _shared(pair: _Pair, size: BrickSize, half: float) -> list[_New]:
    """The half at the course's end and the rest beside it, or one piece of both; nothing where neither can be."""
    total, joint = pair.high - pair.low, size.head_joint.inches
    if total - joint - half >= half - TOLERANCE:
        if pair.ends_left:
            cut = pair.low + half
            return [_New(pair.unit, pair.low, cut), _New(pair.neighbour, cut + joint, pair.high)]
        cut = pair.high - half
        return [_New(pair.neighbour, pair.low, cut - joint), _New(pair.unit, cut, pair.high)]
    if total <= size.length.inches + TOLERANCE:
        return [_New(pair.unit, pair.low, pair.high)]
    return []


def _pairs(grid: Grid, whole: Ints, sorting: Sorting, joint: float) -> Iterator[_Pair]:
    """Every small end piece with the whole unit beside its own end; none for a piece cut at both."""
    trims = sorting.trims
    x0, _, x1, _ = bounds(trims)
    ends = np.flatnonzero(sorting.is_small & (sorting.cut == CUTS.index("length")) & _is_upright_cut(grid, sorting))
    unit = trims.unit[ends]
    ends_left = np.abs(x1[ends] - grid.x1[unit]) <= TOLERANCE
    has_own_end = ends_left | (np.abs(x0[ends] - grid.x0[unit]) <= TOLERANCE)
    beside = np.where(has_own_end, _neighbours(grid, whole, unit, ends_left, joint), -1)
    low = np.where(ends_left, x0[ends], grid.x0[beside])
    high = np.where(ends_left, grid.x1[beside], x1[ends])
    rows = zip(*(column.tolist() for column in (ends, unit, beside, low, high, ends_left)), strict=True)
    yield from (_Pair(*row) for row in rows if row[2] >= 0)


def _is_upright_cut(grid: Grid, sorting: Sorting) -> Flags:
    """Whether a piece is full high, so that only its length was cut."""
    unit = sorting.trims.unit
    full: Flags = np.abs(sorting.height - (grid.y1 - grid.y0)[unit]) <= TOLERANCE
    return full


def _keys(y: Floats, x: Floats) -> Floats:
    """One rising figure for a place in a course: courses lie further apart than any panel is long."""
    keys: Floats = np.round(y * 1e3) * 1e6 + x
    return keys


def _neighbours(grid: Grid, whole: Ints, unit: Ints, ends_left: Flags, joint: float) -> Ints:
    """The whole unit that starts a joint right of each unit, or ends a joint left of it; -1 where there is none."""
    found = np.full(len(unit), -1)
    for side, places in ((ends_left, grid.x0), (~ends_left, grid.x1)):
        keys = _keys(grid.y0[whole], places[whole])
        order = np.argsort(keys)
        x = np.where(ends_left, grid.x1[unit] + joint, grid.x0[unit] - joint)
        wanted = _keys(grid.y0[unit], x)
        near = np.minimum(np.searchsorted(keys[order], wanted - _NEAR), len(keys) - 1)
        hit = side & (np.abs(keys[order][near] - wanted) <= _NEAR)
        found[hit] = whole[order][near][hit]
    return found


def _with(grid: Grid, sorting: Sorting, taken: list[int], made: list[_New], least: float) -> Sorting:
    """The sorting without the trims taken, and with the pieces made."""
    kept = ~np.isin(np.arange(len(sorting.trims.unit)), taken)
    unit = np.array([piece.unit for piece in made])
    x0, x1 = np.array([piece.x0 for piece in made]), np.array([piece.x1 for piece in made])
    y0, y1 = grid.y0[unit], grid.y1[unit]
    points = np.stack([x0, y0, x1, y0, x1, y1, x0, y1], axis=-1).reshape(-1, 2)
    area = float((sorting.length * sorting.height)[taken].sum())
    return replace(
        sorting,
        trims=join([sorting.trims.take(kept), Pieces(unit, np.full(len(unit), 4), points)]),
        cut=np.append(sorting.cut[kept], np.full(len(unit), CUTS.index("length"), dtype=np.int8)),
        length=np.append(sorting.length[kept], x1 - x0),
        height=np.append(sorting.height[kept], y1 - y0),
        is_small=np.append(sorting.is_small[kept], x1 - x0 < least - TOLERANCE),
        area=sorting.area - area + float(((x1 - x0) * (y1 - y0)).sum()),
    )
