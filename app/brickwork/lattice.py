"""Where the units of a bond stand: lines of units along the first lattice vector, found by arithmetic.

A *line* is one cell of the motif repeated along `across`; line j is moved by j times `up`. Everything is in the bond's
own frame (turned back where the bond is turned), in inches; every position is origin + k * module, never a running
sum.
"""

from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from app.brickwork.bond import Bond
from app.brickwork.stretch import IDENTITY, Stretch
from app.panel.size import BrickSize
from app.panel.tolerance import TOLERANCE

Floats = NDArray[np.float64]
Ints = NDArray[np.int64]
Flags = NDArray[np.bool_]


@dataclass(frozen=True, slots=True)
class Lattice:
    """A bond laid with one brick size: positions and sizes of the motif's units, and the two vectors, inches."""

    x: Floats
    y: Floats
    width: Floats
    height: Floats
    across: tuple[float, float]
    up: tuple[float, float]
    along: Stretch = IDENTITY
    upward: Stretch = IDENTITY

    @property
    def is_stretched(self) -> bool:
        """Whether joints have given, so that units stand off their lattice places."""
        return not (self.along.is_identity and self.upward.is_identity)

    @property
    def determinant(self) -> float:
        """Area of one motif, square inches."""
        return self.across[0] * self.up[1] - self.across[1] * self.up[0]

    @property
    def is_level(self) -> bool:
        """Whether a line of units is level, as in every bond of plain courses."""
        return self.across[1] == 0


def lattice(
    bond: Bond,
    size: BrickSize,
    origin: tuple[float, float],
    along: Stretch = IDENTITY,
    upward: Stretch = IDENTITY,
) -> Lattice:
    """The bond in inches for one brick size, its first cell's corner at `origin` (bond's own frame).

    `along` and `upward` say where lines really stand; meant for level bonds that are not turned.
    """
    faces = [cell.face(size) for cell in bond.cells]
    return Lattice(
        x=np.array([origin[0] + cell.x.inches(size) for cell in bond.cells]),
        y=np.array([origin[1] + cell.y.inches(size) for cell in bond.cells]),
        width=np.array([width for width, _ in faces]),
        height=np.array([height for _, height in faces]),
        across=(bond.across[0].inches(size), bond.across[1].inches(size)),
        up=(bond.up[0].inches(size), bond.up[1].inches(size)),
        along=along,
        upward=upward,
    )


_SLACK = 1.0
"""Inches: more than joints give within one unit, so that no unit is missed when a box is taken back to its lattice."""

Box = tuple[Any, Any, Any, Any]


def lattice_box(lat: Lattice, box: Box) -> Box:
    """The box (x0, y0, x1, y1) in which lattice places of units over a box of the face are; numbers or arrays."""
    if not lat.is_stretched:
        return box
    x0, y0, x1, y1 = box
    return (
        lat.along.nominal(x0) - _SLACK,
        lat.upward.nominal(y0) - _SLACK,
        lat.along.nominal(x1) + _SLACK,
        lat.upward.nominal(y1) + _SLACK,
    )


def runs(counts: Ints) -> tuple[Ints, Ints]:
    """For counts (2, 0, 3): owners (0, 0, 2, 2, 2) and ranks (0, 1, 0, 1, 2)."""
    owners = np.repeat(np.arange(len(counts)), counts)
    ranks = np.arange(len(owners)) - np.repeat(np.cumsum(counts) - counts, counts)
    return owners, ranks


def _whole_range(low: Floats, high: Floats) -> tuple[Ints, Ints]:
    """First integer and count of the integers strictly between low and high."""
    first = np.floor(low).astype(np.int64) + 1
    last = np.ceil(high).astype(np.int64) - 1
    return first, np.maximum(last - first + 1, 0)


def line_range(lat: Lattice, cell: Ints, box: tuple[Floats, Floats, Floats, Floats]) -> tuple[Ints, Ints]:
    """First j and count of lines of `cell` that can have a unit over each box (x0, y0, x1, y1)."""
    x0, y0, x1, y1 = box
    (ax, ay), det = lat.across, lat.determinant
    left, right = x0 - lat.x[cell] - lat.width[cell], x1 - lat.x[cell]
    low, high = y0 - lat.y[cell] - lat.height[cell], y1 - lat.y[cell]
    if lat.is_level:
        return _whole_range(low / lat.up[1], high / lat.up[1])
    corners = np.stack([(ax * y - ay * x) / det for x in (left, right) for y in (low, high)])
    return _whole_range(corners.min(axis=0), corners.max(axis=0))


def unit_range(lat: Lattice, cell: Ints, j: Ints, box: tuple[Floats, Floats, Floats, Floats]) -> tuple[Ints, Ints]:
    """First i and count of the units of line (cell, j) whose box overlaps each box by more than the tolerance."""
    x0, y0, x1, y1 = (side + shift for side, shift in zip(box, (TOLERANCE,) * 2 + (-TOLERANCE,) * 2, strict=True))
    x, y = lat.x[cell] + j * lat.up[0], lat.y[cell] + j * lat.up[1]
    low, high = _span(x0 - x - lat.width[cell], x1 - x, lat.across[0])
    if lat.is_level:
        first, count = _whole_range(low, high)
        return first, np.where((y < y1) & (y + lat.height[cell] > y0), count, 0)
    low_y, high_y = _span(y0 - y - lat.height[cell], y1 - y, lat.across[1])
    return _whole_range(np.maximum(low, low_y), np.minimum(high, high_y))


def _span(low: Floats, high: Floats, step: float) -> tuple[Floats, Floats]:
    return (low / step, high / step) if step > 0 else (high / step, low / step)


@dataclass(frozen=True, slots=True)
class Grid:
    """Every unit whose box overlaps a region's bounding box, line after line; `first` is where a line starts."""

    lat: Lattice
    cell: Ints
    i: Ints
    j: Ints
    x0: Floats
    y0: Floats
    x1: Floats
    y1: Floats
    line_from: Ints
    line_count: Ints
    first: Ints
    start: Ints
    count: Ints

    def line(self, cell: Ints, j: Ints) -> Ints:
        """Number of line (cell, j) in this grid, or -1 where it has none."""
        rank = j - self.line_from[cell]
        inside = (rank >= 0) & (rank < self.line_count[cell])
        before = np.cumsum(self.line_count) - self.line_count
        return np.where(inside, before[cell] + rank, -1)


def grid(lat: Lattice, bounds: tuple[float, float, float, float]) -> Grid:
    """All units over a box (x0, y0, x1, y1) in inches, bond's own frame."""
    cells = np.arange(len(lat.x))
    bounds = lattice_box(lat, bounds)
    box = tuple(np.full(len(cells), side) for side in bounds)
    line_from, line_count = line_range(lat, cells, box)  # type: ignore[arg-type]
    cell, rank = runs(line_count)
    j = line_from[cell] + rank
    start, count = unit_range(lat, cell, j, tuple(np.full(len(cell), side) for side in bounds))  # type: ignore[arg-type]
    line, step = runs(count)
    i = start[line] + step
    x0 = (lat.x[cell] + j * lat.up[0])[line] + i * lat.across[0]
    y0 = (lat.y[cell] + j * lat.up[1])[line] + i * lat.across[1]
    if lat.is_stretched:
        x0, y0 = lat.along.real(x0), lat.upward.real(y0)
    return Grid(
        lat,
        cell[line],
        i,
        j[line],
        x0,
        y0,
        x0 + lat.width[cell][line],
        y0 + lat.height[cell][line],
        line_from,
        line_count,
        np.cumsum(count) - count,
        start,
        count,
    )
