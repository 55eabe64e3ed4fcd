"""One region of the face laid in its bond's own frame, and all of them put together in the face frame."""

from dataclasses import dataclass
from math import cos, radians, sin
from typing import Any

import numpy as np
from numpy.typing import NDArray

from app.brickwork.bond import KINDS, STANDING, Bond
from app.brickwork.boundary import edges, inside, touches
from app.brickwork.closers import closed
from app.brickwork.cuts import Sorting, sort_pieces
from app.brickwork.lattice import Floats, Grid, Ints, grid, lattice
from app.brickwork.pieces import Pieces, bounds, cut, join
from app.brickwork.regions import Region
from app.brickwork.turning import turned, turned_pieces, turned_points
from app.brickwork.units import Trims, Units
from app.panel.size import BrickSize


@dataclass(frozen=True, slots=True)
class Limits:
    """What a piece must have to be brick, inches; `least_piece` None means the half bat of each region's own size.

    `has_closers` ends courses in closers instead of pieces below the least.
    """

    smallest_cut: float
    least_piece: float | None = None
    has_closers: bool = False

    def least_of(self, size: BrickSize) -> float:
        """The least length of a piece of this brick, inches."""
        return size.half_bat if self.least_piece is None else self.least_piece


@dataclass(frozen=True, slots=True)
class Part:
    """One region laid, in its bond's own frame."""

    zone: int
    region: Region
    bond: Bond
    grid: Grid
    whole: Ints
    sorting: Sorting

    @classmethod
    def of(cls, zone: int, region: Region, limits: "Limits") -> "Part":
        """Lay one region."""
        bond = region.bond
        origin = turned_points(np.array([region.origin]), -bond.turn)[0]
        extent = turned(region.extent, -bond.turn)
        lat = lattice(bond, region.size, (float(origin[0]), float(origin[1])), region.across, region.up)
        laid = grid(lat, extent.bounds)
        boundary = edges(extent)
        which, unit = touches(laid, boundary)
        within = inside(laid, boundary, extent)
        within[unit] = False
        standing = np.array([cell.kind in STANDING for cell in bond.cells])
        pieces = cut(laid, boundary, extent, which, unit)
        least = limits.least_of(region.size)
        sorting, whole = sort_pieces(laid, pieces, standing, limits.smallest_cut, least), np.flatnonzero(within)
        if limits.has_closers and bond.turn == 0 and lat.is_level:
            whole, sorting = closed(laid, whole, sorting, region.size, least)
        return cls(zone, region, bond, laid, whole, sorting)

    @property
    def brick_area(self) -> float:
        """Area of the whole units and the trims, square inches."""
        lat, cell = self.grid.lat, self.grid.cell[self.whole]
        return float((lat.width * lat.height)[cell].sum()) + self.sorting.area

    def columns(self) -> list[NDArray[Any]]:
        """Columns of `Units` for this region, whole units first."""
        grid, trims = self.grid, self.sorting.trims
        unit = np.concatenate([self.whole, trims.unit])
        whole = _face_boxes(grid, self.whole, self.bond.turn)
        trimmed = bounds(turned_pieces(trims, self.bond.turn))
        x0, y0, x1, y1 = (np.concatenate(pair) for pair in zip(whole, trimmed, strict=True))
        kind = np.array([KINDS.index(cell.kind) for cell in self.bond.cells], dtype=np.int8)
        return [
            x0,
            y0,
            x1 - x0,
            y1 - y0,
            kind[grid.cell[unit]],
            np.full(len(unit), self.zone, dtype=np.int16),
            grid.cell[unit].astype(np.int16),
            grid.i[unit].astype(np.int32),
            grid.j[unit].astype(np.int32),
            self._courses(unit),
            np.arange(len(unit)) >= len(self.whole),
        ]

    def _courses(self, unit: Ints) -> NDArray[np.int32]:
        """Which of the region's courses each unit stands in, by the foot of the whole unit."""
        turn, grid = self.bond.turn, self.grid
        foot = (_lattice_foot(grid, unit) if turn == 0 else _face_boxes(grid, unit, turn)[1]) - self.region.origin[1]
        courses: NDArray[np.int32] = np.floor(foot / self.region.size.gauge + 1e-4).astype(np.int32)
        return courses


def _lattice_foot(grid: Grid, unit: Ints) -> Floats:
    cell = grid.cell[unit]
    foot: Floats = grid.lat.y[cell] + grid.j[unit] * grid.lat.up[1] + grid.i[unit] * grid.lat.across[1]
    return foot


def _face_boxes(grid: Grid, unit: Ints, turn: float) -> tuple[Floats, Floats, Floats, Floats]:
    x0, y0, x1, y1 = grid.x0[unit], grid.y0[unit], grid.x1[unit], grid.y1[unit]
    if turn == 0:
        return x0, y0, x1, y1
    centre = turned_points(np.column_stack([x0 + x1, y0 + y1]) / 2, turn)
    c, s = abs(cos(radians(turn))), abs(sin(radians(turn)))
    half_x, half_y = (c * (x1 - x0) + s * (y1 - y0)) / 2, (s * (x1 - x0) + c * (y1 - y0)) / 2
    return centre[:, 0] - half_x, centre[:, 1] - half_y, centre[:, 0] + half_x, centre[:, 1] + half_y


def _whole_first(parts: list[list[NDArray[Any]]]) -> list[NDArray[Any]]:
    if len(parts) == 1:
        return parts[0]
    columns = [np.concatenate(column) for column in zip(*parts, strict=True)]
    order = np.argsort(columns[-1], kind="stable")
    return [column[order] for column in columns]


def assemble(parts: list[Part]) -> tuple[Units, Trims, Pieces]:
    """All regions as one: whole units of every region first, then the trims of every region in the same order."""
    if not parts:
        return _nothing()
    units = Units(*_whole_first([part.columns() for part in parts]))
    pieces = join([turned_pieces(part.sorting.trims, part.bond.turn) for part in parts])
    trims = Trims(
        unit=np.arange(len(units) - len(pieces.unit), len(units)),
        cut=np.concatenate([part.sorting.cut for part in parts]),
        length=np.concatenate([part.sorting.length for part in parts]),
        height=np.concatenate([part.sorting.height for part in parts]),
        is_small=np.concatenate([part.sorting.is_small for part in parts]),
        pieces=pieces,
    )
    return units, trims, join([turned_pieces(part.sorting.left_out, part.bond.turn) for part in parts])


def _nothing() -> tuple[Units, Trims, Pieces]:
    none, no_points = np.zeros(0, dtype=np.int64), np.zeros((0, 2))
    empty = Pieces(none, none, no_points)
    floats, flags = np.zeros(0), np.zeros(0, dtype=np.bool_)
    small = none.astype(np.int8)
    wide, narrow = none.astype(np.int32), none.astype(np.int16)
    units = Units(floats, floats, floats, floats, small, narrow, narrow, wide, wide, wide, flags)
    return units, Trims(none, small, floats, floats, flags, empty), empty
