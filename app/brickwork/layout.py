"""The layout of a panel's face: every unit whole, trimmed or left out. See `lay_out`."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property
from math import cos, floor, radians, sin

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from app.brickwork.bond import KINDS, STANDING, face
from app.brickwork.bonds import BONDS
from app.brickwork.boundary import edges, inside, touches
from app.brickwork.cuts import CUTS, Sorting, sort_pieces
from app.brickwork.lattice import Floats, Grid, Ints, grid, lattice
from app.brickwork.pieces import Pieces, areas, bounds, cut, join
from app.brickwork.regions import Region, regions
from app.brickwork.sizes import CATALOGUE
from app.panel.geometry import brick_field, openings_polygon, outline_polygon
from app.panel.size import BrickSize
from app.panel.tolerance import TOLERANCE
from app.panel.values import Panel


@dataclass(frozen=True, slots=True)
class Units:
    """Pieces of brick side by side: whole units first, then trimmed ones in the order of `Layout.trims`.

    `x, y, width, height` bound the piece in the face frame, inches; `kind` counts in `KINDS`, `zone` in
    `Layout.regions`; `cell`, `i`, `j` say which unit of the region's lattice it is; `course` counts from the origin.
    """

    x: Floats
    y: Floats
    width: Floats
    height: Floats
    kind: NDArray[np.int8]
    zone: NDArray[np.int16]
    cell: NDArray[np.int16]
    i: NDArray[np.int32]
    j: NDArray[np.int32]
    course: NDArray[np.int32]
    is_trimmed: NDArray[np.bool_]

    def __len__(self) -> int:
        return len(self.x)


@dataclass(frozen=True, slots=True)
class Trims:
    """Trimmed pieces: which unit, cut class (counts in `CUTS`), length and height along the unit's own axes, outline."""

    unit: Ints
    cut: NDArray[np.int8]
    length: Floats
    height: Floats
    is_small: NDArray[np.bool_]
    pieces: Pieces

    def __len__(self) -> int:
        return len(self.unit)


@dataclass(frozen=True, slots=True)
class Area:
    """Square inches: the panel, its openings, the brick field, the brick in it, and what was left out as joint."""

    panel: float
    openings: float
    field: float
    brick: float
    left_out: float


@dataclass(frozen=True, slots=True)
class Course:
    """One course of the field's brickwork: number, bottom and top of its units, inches."""

    course: int
    bottom: float
    top: float


@dataclass(frozen=True)
class Layout:
    """Everything known about one face. All drawings, lists and counts are made from this."""

    panel: Panel
    size: BrickSize
    field: BaseGeometry
    regions: tuple[Region, ...]
    units: Units
    trims: Trims
    left_out: Pieces
    area: Area
    least_piece: float
    smallest_cut: float

    @cached_property
    def courses(self) -> tuple[Course, ...]:
        """Courses of the field from the lowest to the highest that the brick field reaches; empty for no field."""
        if self.field.is_empty:
            return ()
        origin, gauge, height = self.origin[1], self.size.gauge, self.size.height.inches
        low, high = self.field.bounds[1], self.field.bounds[3]
        first = floor((low - origin - height + TOLERANCE) / gauge) + 1
        last = floor((high - origin - TOLERANCE) / gauge)
        return tuple(Course(k, origin + k * gauge, origin + k * gauge + height) for k in range(first, last + 1))

    @cached_property
    def origin(self) -> tuple[float, float]:
        """Lower-left corner of the field's cell 0 in course 0, face frame, inches."""
        typed = self.panel.field.origin
        if typed is not None:
            return typed[0].inches, typed[1].inches
        return (0.0, 0.0) if self.field.is_empty else (float(self.field.bounds[0]), float(self.field.bounds[1]))

    @property
    def whole(self) -> int:
        return len(self.units) - len(self.trims)

    @property
    def small(self) -> int:
        return int(np.count_nonzero(self.trims.is_small))

    def by_kind(self) -> dict[str, tuple[int, int]]:
        """Whole and trimmed pieces of each kind that the face has."""
        trimmed = self.units.is_trimmed
        whole_of = np.bincount(self.units.kind[~trimmed], minlength=len(KINDS))
        trimmed_of = np.bincount(self.units.kind[trimmed], minlength=len(KINDS))
        pairs = zip(KINDS, whole_of.tolist(), trimmed_of.tolist(), strict=True)
        return {kind: (whole, cut) for kind, whole, cut in pairs if whole or cut}

    def trim_rows(self) -> Iterator[tuple[int, str, float, float, bool, Floats]]:
        """Each trim as (unit, cut class, length, height, is small, outline), inches."""
        trims = self.trims
        rows = zip(
            trims.unit.tolist(),
            trims.cut.tolist(),
            trims.length.tolist(),
            trims.height.tolist(),
            trims.is_small.tolist(),
            trims.pieces.first.tolist(),
            trims.pieces.count.tolist(),
            strict=True,
        )
        for unit, cut_class, length, height, is_small, first, count in rows:
            yield unit, CUTS[cut_class], length, height, is_small, trims.pieces.points[first : first + count]


def lay_out(panel: Panel, sizes: Mapping[str, BrickSize] = CATALOGUE) -> Layout:
    """Lay the panel's face: clip every unit of every region to it and sort the pieces.

    `sizes` has the panel's sizes by name. An empty brick field gives an empty layout. Raises KeyError for a size or
    bond that is not known; `panel.check.checked` and the project file reader refuse those before.
    """
    size = sizes[panel.field.size]
    field = brick_field(panel, size.head_joint.inches)
    shares = tuple(regions(panel, field, dict(sizes)))
    smallest = panel.smallest_cut.inches if panel.smallest_cut is not None else 0.25
    parts = [_Part.of(k, region, panel, smallest) for k, region in enumerate(shares)]
    units, trims, left_out = _assemble(parts)
    brick = sum(part.whole_area for part in parts) + float(areas(trims.pieces).sum())
    return Layout(
        panel=panel,
        size=size,
        field=field,
        regions=shares,
        units=units,
        trims=trims,
        left_out=left_out,
        area=Area(
            panel=outline_polygon(panel).area,
            openings=openings_polygon(panel).area,
            field=field.area,
            brick=brick,
            left_out=float(areas(left_out).sum()),
        ),
        least_piece=_least_piece(panel, size),
        smallest_cut=smallest,
    )


def _least_piece(panel: Panel, size: BrickSize) -> float:
    return panel.least_piece.inches if panel.least_piece is not None else size.half_bat


@dataclass(frozen=True, slots=True)
class _Part:
    """One region laid, in its bond's own frame."""

    zone: int
    region: Region
    grid: Grid
    whole: Ints
    sorting: Sorting

    @classmethod
    def of(cls, zone: int, region: Region, panel: Panel, smallest_cut: float) -> "_Part":
        bond = BONDS[region.bond]
        origin = turned_points(np.array([region.origin]), -bond.turn)[0]
        extent = turned(region.extent, -bond.turn)
        laid = grid(lattice(bond, region.size, (float(origin[0]), float(origin[1]))), extent.bounds)
        boundary = edges(extent)
        which, unit = touches(laid, boundary)
        within = inside(laid, boundary, extent)
        within[unit] = False
        kinds = [cell.kind for cell in bond.cells]
        standing = np.array([kind in STANDING for kind in kinds])
        pieces = cut(laid, boundary, extent, which, unit)
        least = _least_piece(panel, region.size)
        return cls(zone, region, laid, np.flatnonzero(within), sort_pieces(laid, pieces, standing, smallest_cut, least))

    @property
    def turn(self) -> float:
        return BONDS[self.region.bond].turn

    @property
    def whole_area(self) -> float:
        lat, cell = self.grid.lat, self.grid.cell[self.whole]
        return float((lat.width * lat.height)[cell].sum())

    def units(self) -> list[NDArray[np.generic]]:
        """Columns of `Units` for this region, whole units first."""
        grid, turn = self.grid, self.turn
        pieces = self.sorting.trims
        unit = np.concatenate([self.whole, pieces.unit])
        whole = _face_boxes(grid, self.whole, turn)
        trimmed = bounds(pieces if turn == 0 else _turn_pieces(pieces, turn))
        x0, y0, x1, y1 = (np.concatenate(pair) for pair in zip(whole, trimmed, strict=True))
        kind = np.array([KINDS.index(cell.kind) for cell in BONDS[self.region.bond].cells], dtype=np.int8)
        gauge = self.region.size.gauge
        course = np.floor((y0 - self.region.origin[1]) / gauge + 1e-4)
        if turn == 0:
            course = np.floor((grid.y0[unit] - self.region.origin[1]) / gauge + 1e-4)
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
            course.astype(np.int32),
            np.arange(len(unit)) >= len(self.whole),
        ]


def _face_boxes(grid: Grid, unit: Ints, turn: float) -> tuple[Floats, Floats, Floats, Floats]:
    x0, y0, x1, y1 = grid.x0[unit], grid.y0[unit], grid.x1[unit], grid.y1[unit]
    if turn == 0:
        return x0, y0, x1, y1
    centre = turned_points(np.column_stack([x0 + x1, y0 + y1]) / 2, turn)
    c, s = abs(cos(radians(turn))), abs(sin(radians(turn)))
    half_x, half_y = (c * (x1 - x0) + s * (y1 - y0)) / 2, (s * (x1 - x0) + c * (y1 - y0)) / 2
    return centre[:, 0] - half_x, centre[:, 1] - half_y, centre[:, 0] + half_x, centre[:, 1] + half_y


def turned_points(points: Floats, degrees: float) -> Floats:
    """Points turned anticlockwise about the face frame's origin."""
    if degrees == 0:
        return points
    c, s = cos(radians(degrees)), sin(radians(degrees))
    return np.column_stack([c * points[:, 0] - s * points[:, 1], s * points[:, 0] + c * points[:, 1]])


def turned(shape: BaseGeometry, degrees: float) -> BaseGeometry:
    """A shape turned anticlockwise about the face frame's origin."""
    return shape if degrees == 0 else shapely.transform(shape, lambda points: turned_points(points, degrees))


def _turn_pieces(pieces: Pieces, degrees: float) -> Pieces:
    return Pieces(pieces.unit, pieces.count, turned_points(pieces.points, degrees))


def _assemble(parts: list[_Part]) -> tuple[Units, Trims, Pieces]:
    """All regions as one: whole units of every region first, then the trims of every region in the same order."""
    if not parts:
        return _nothing()
    columns = [np.concatenate(column) for column in zip(*(part.units() for part in parts), strict=True)]
    order = np.argsort(columns[-1], kind="stable")
    units = Units(*(column[order] for column in columns))  # type: ignore[arg-type]
    pieces = join([_turn_pieces(part.sorting.trims, part.turn) for part in parts])
    trims = Trims(
        unit=np.arange(len(units) - len(pieces.unit), len(units)),
        cut=np.concatenate([part.sorting.cut for part in parts]),
        length=np.concatenate([part.sorting.length for part in parts]),
        height=np.concatenate([part.sorting.height for part in parts]),
        is_small=np.concatenate([part.sorting.is_small for part in parts]),
        pieces=pieces,
    )
    return units, trims, join([_turn_pieces(part.sorting.left_out, part.turn) for part in parts])


def _nothing() -> tuple[Units, Trims, Pieces]:
    none, no_points = np.zeros(0, dtype=np.int64), np.zeros((0, 2))
    empty = Pieces(none, none, no_points)
    floats, flags = np.zeros(0), np.zeros(0, dtype=np.bool_)
    small = none.astype(np.int8)
    wide, narrow = none.astype(np.int32), none.astype(np.int16)
    units = Units(floats, floats, floats, floats, small, narrow, narrow, wide, wide, wide, flags)
    return units, Trims(none, small, floats, floats, flags, empty), empty


def whole_outlines(layout: Layout, zone: int) -> Floats:
    """Corners of the whole units of one region, shape (units, 4, 2), face frame, inches, anticlockwise."""
    units, region = layout.units, layout.regions[zone]
    chosen = (units.zone == zone) & ~units.is_trimmed
    bond = BONDS[region.bond]
    size = np.array([face(cell.kind, region.size) for cell in bond.cells])[units.cell[chosen]]
    centre = np.column_stack([units.x + units.width / 2, units.y + units.height / 2])[chosen]
    corners = np.array([[-1, -1], [1, -1], [1, 1], [-1, 1]]) / 2 * size[:, None, :]
    return centre[:, None, :] + turned_points(corners.reshape(-1, 2), bond.turn).reshape(-1, 4, 2)
