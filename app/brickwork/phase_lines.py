"""The lines of units of a level bond, as the search for its best origin needs them."""

from dataclasses import dataclass
from math import ceil, floor

import numpy as np

from app.brickwork.bond import STANDING, Bond
from app.brickwork.lattice import Flags, Floats, Ints, Lattice, lattice
from app.panel.size import BrickSize
from app.panel.tolerance import TOLERANCE


@dataclass(frozen=True, slots=True)
class Course:
    """Units that fill one course, end to end: foot and height, and the units' starts and widths; inches."""

    foot: float
    height: float
    start: Floats
    width: Floats


@dataclass(frozen=True, slots=True)
class Lines:
    """Every line of units about the origin 0, 0 that differs from the others; each repeats `step` higher.

    Lines whose units stand alike across share a lane, so that what depends on x alone is worked out once a lane.
    """

    across: float
    up: tuple[float, float]
    step: float
    foot: Floats
    height: Floats
    width: Floats
    standing: Flags
    lane: Ints
    lane_start: Floats
    lane_width: Floats
    lane_height: Floats
    lane_standing: Flags
    courses: tuple[Course, ...]


def lines_of(bond: Bond, size: BrickSize, low: float, high: float) -> Lines | None:
    """The bond's lines over the heights `low` to `high`, inches; None for a bond that is turned or not level."""
    lat = lattice(bond, size, (0.0, 0.0))
    if bond.turn or not lat.is_level:
        return None
    across, up = abs(lat.across[0]), lat.up if lat.up[1] > 0 else (-lat.up[0], -lat.up[1])
    first = floor((low - float((lat.y + lat.height).max())) / up[1]) - 1
    rows = _rows_until_they_repeat(across, up[0], ceil((high - float(lat.y.min())) / up[1]) + 1 - first)
    cell, row = (part.ravel() for part in np.meshgrid(np.arange(len(lat.x)), first + np.arange(rows), indexing="ij"))
    start, standing = lat.x[cell] + row * up[0], np.array([cell.kind in STANDING for cell in bond.cells])
    start = np.mod(start + TOLERANCE, across) - TOLERANCE
    table = np.column_stack([start, lat.width[cell], lat.height[cell], standing[cell]])
    _, at, lane = np.unique(table.round(7), axis=0, return_index=True, return_inverse=True)
    return Lines(
        across=across,
        up=up,
        step=rows * up[1],
        foot=lat.y[cell] + row * up[1],
        height=lat.height[cell],
        width=lat.width[cell],
        standing=standing[cell],
        lane=lane,
        lane_start=start[at],
        lane_width=table[at, 1],
        lane_height=table[at, 2],
        lane_standing=standing[cell[at]],
        courses=_courses(bond, size, lat, up, first + np.arange(rows)),
    )


def _rows_until_they_repeat(across: float, shift: float, at_most: int) -> int:
    """After how many rows the units stand over each other again, or else as many as the face can have."""
    rows = np.arange(1, at_most + 1)
    over = np.mod(rows * shift + TOLERANCE, across) < 2 * TOLERANCE
    return int(rows[over][0]) if over.any() else at_most


def _courses(bond: Bond, size: BrickSize, lat: Lattice, up: tuple[float, float], rows: Ints) -> tuple[Course, ...]:
    """Courses of cells of one foot and height that leave no gap; a bond of other cells has none."""
    wide = np.array([cell.width.inches(size) for cell in bond.cells])
    keys = np.column_stack([lat.y, lat.height]).round(7)
    _, group = np.unique(keys, axis=0, return_inverse=True)
    members = [np.flatnonzero(group == k) for k in range(int(group.max()) + 1)]
    filled = [cells for cells in members if abs(wide[cells].sum() - abs(lat.across[0])) <= TOLERANCE]
    return tuple(
        Course(float(lat.y[cells[0]] + row * up[1]), float(lat.height[cells[0]]), start, lat.width[cells])
        for cells in filled
        for row in rows
        for start in [lat.x[cells] + row * up[0]]
    )
