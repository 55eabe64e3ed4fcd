"""How far head joints stand from those of the next course: what a bond has by its motif, and what a face has."""

from functools import lru_cache

import numpy as np

from app.brickwork.bond import Bond
from app.brickwork.fit_grids import course_grid
from app.brickwork.fit_lines import Grid1
from app.brickwork.lattice import Floats, lattice
from app.panel.size import BrickSize
from app.panel.tolerance import TOLERANCE

_NEAR = 1e-4
"""Inches: places of a motif nearer than this are one place."""


@lru_cache(maxsize=256)
def own_least_lap(bond: Bond, size: BrickSize) -> float:
    """The least lap of the bond's own motif, inches; 0 where joints stand over each other, or there are no courses."""
    grid = course_grid(bond, size, (0.0, 0.0))
    if not isinstance(grid, Grid1):
        return 0.0
    lat, across = lattice(bond, size, (0.0, 0.0)), abs(bond.across[0].inches(size))
    rows = (lat.y[:, None] + grid.step - lat.y[None, :]) / lat.up[1]
    follows = np.abs(rows - np.round(rows)) * abs(lat.up[1]) <= _NEAR
    lap = _around(lat.x[:, None] - lat.x[None, :] - np.round(rows) * lat.up[0], across)
    return float(lap[follows].min()) if follows.any() else 0.0


@lru_cache(maxsize=256)
def is_mirrored(bond: Bond, size: BrickSize) -> bool:
    """Whether the bond looks the same in a mirror, so that the ends of a pier can be alike; False for a turned one or
    one without courses. Raked bonds and third bond are not."""
    grid = course_grid(bond, size, (0.0, 0.0))
    if not isinstance(grid, Grid1):
        return False
    lat, across = lattice(bond, size, (0.0, 0.0)), abs(bond.across[0].inches(size))
    lines = max(1, round(abs(lat.up[1]) / grid.step))
    feet = np.arange(-lines, 2 * lines + 1) * grid.step + float(lat.y.min())
    joints = [_joints_at(foot, lat.x, lat.y, lat.up, across) for foot in feet.tolist()]
    first = next((row for row in joints if len(row)), np.zeros(0))
    return any(all(_is_same_mirrored(row, turn, across) for row in joints) for turn in (first[:1] + first).tolist())


def _joints_at(foot: float, x: Floats, y: Floats, up: tuple[float, float], across: float) -> Floats:
    """Where the units of the course at a foot start, taken back to one repeat across."""
    rows = (foot - y) / up[1]
    there = np.abs(rows - np.round(rows)) * abs(up[1]) <= _NEAR
    joints: Floats = np.mod(x[there] + np.round(rows[there]) * up[0], across)
    return joints


def _is_same_mirrored(row: Floats, turn: float, across: float) -> bool:
    return bool((_around(turn - row[:, None] - row[None, :], across) <= _NEAR).any(axis=1).all())


def _around(distance: Floats, across: float) -> Floats:
    """Distances of places that repeat, to the nearest repeat."""
    rest = np.mod(distance, across)
    nearest: Floats = np.minimum(rest, across - rest)
    return nearest


def least_laps(row: Floats, x: Floats) -> Floats:
    """For head joints at `x` of courses `row` (whole numbers): how far the nearest joint of the next course up stands
    to the right, negative to the left, inches; infinite where that course has none. Sorted by row, then x."""
    if not len(x):
        return np.zeros(0)
    low = float(x.min())
    reach = 2 * (float(x.max()) - low) + 1
    keys = row * reach + (x - low)
    at = np.searchsorted(keys, keys + reach)
    lap: Floats = np.full(len(x), np.inf)
    for other in (np.maximum(at - 1, 0), np.minimum(at, len(x) - 1)):
        away = np.where(np.abs(row[other] - row - 1) <= TOLERANCE, x[other] - x, np.inf)
        lap = np.where(np.abs(away) < np.abs(lap), away, lap)
    return lap
