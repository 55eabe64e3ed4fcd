"""In which order the sheets of one region are laid when columns of sheets go up the panel."""

from functools import lru_cache
from heapq import heapify, heappop, heappush

import numpy as np
import shapely

from app.brickwork.bond import Bond
from app.brickwork.lattice import Floats, Ints
from app.liner.mould import mould
from app.panel.size import BrickSize

Steps = tuple[tuple[int, int], ...]

_GRID = 1e-6
"""Inches on which edges of neighbouring sheets are brought together before they are compared."""

_LEAST_SEAM = 0.01
"""Inches; sheets that touch over less than this touch in a corner."""


def columns_first(column: Ints, row: Ints, place: Ints, line: Ints, later: Steps) -> Ints:
    """The sheets' indices column by column, but each after all sheets whose flange it lies on.

    `place` and `line` say where on the lattice each sheet lies, `later` are the steps from a sheet to those that lie
    on it. Where rows of sheets are staggered, a sheet waits for its neighbour of the next column in the row before.
    """
    at = {pair: k for k, pair in enumerate(zip(place.tolist(), line.tolist(), strict=True))}
    over: list[list[int]] = [[at[p + dp, n + dn] for dp, dn in later if (p + dp, n + dn) in at] for p, n in at]
    waits = [0] * len(over)
    for some in over:
        for k in some:
            waits[k] += 1
    keys = list(zip(column.tolist(), row.tolist(), range(len(over)), strict=True))
    ready = [key for key, wait in zip(keys, waits, strict=True) if wait == 0]
    heapify(ready)
    order = []
    while ready:
        first = heappop(ready)[2]
        order.append(first)
        for k in over[first]:
            waits[k] -= 1
            if waits[k] == 0:
                heappush(ready, keys[k])
    return np.array(order, dtype=np.int64)


def later_steps(bond: Bond, size: BrickSize, columns: int, rows: int, away: tuple[int, int]) -> Steps:
    """Steps (places, lines) from a sheet to those that lie on its flanges, when sheets follow on `away`: 1 right or up,
    -1 left or down."""
    right, up = away
    beside, above = _neighbours(bond, size, columns, rows)
    return (*((right * p, n) for p, n in beside), *((up * p, up * n) for p, n in above))


@lru_cache(maxsize=256)
def _neighbours(bond: Bond, size: BrickSize, columns: int, rows: int) -> tuple[Steps, Steps]:
    """Steps to the sheets that share an edge with a sheet: those to its right in its row, those above it."""
    shape = mould(bond, size, columns, rows)
    along, lines = shape.repeats
    wide, high = np.ptp(shape.outline, axis=0).tolist()
    reach = int(wide / shape.length) + 2
    above = [
        (p, n)
        for n in range(lines, int(high / shape.step[1]) + lines + 1, lines)
        for p in range(-reach - int(n * shape.step[0] / shape.length) - 1, reach + 1)
    ]
    moves = np.array([(p * shape.length + n * shape.step[0], n * shape.step[1]) for p, n in above])
    touching = _seams(shape.outline, moves) > _LEAST_SEAM
    return ((along, 0),), tuple(step for step, touches in zip(above, touching.tolist(), strict=True) if touches)


def _seams(outline: Floats, moves: Floats) -> Floats:
    """How long an edge a sheet shares with itself moved each way, inches."""
    rings = shapely.linearrings(np.concatenate([outline[None] + moves[:, None], outline[None]]))
    found: Floats = shapely.length(shapely.intersection(rings[:-1], rings[-1], grid_size=_GRID))
    return found
