"""The layout of a panel's face: every unit whole, trimmed or left out. See `lay_out`."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cached_property
from math import floor

import numpy as np
from shapely.geometry.base import BaseGeometry

from app.brickwork.bond import KINDS, Bond
from app.brickwork.bonds import BONDS
from app.brickwork.cuts import CUTS
from app.brickwork.fit_grids import has_plain_courses
from app.brickwork.lattice import Floats
from app.brickwork.panel_fit import States, panel_fit, states
from app.brickwork.parts import Limits, Part, assemble
from app.brickwork.pieces import Pieces, areas
from app.brickwork.place import ALONE, Place
from app.brickwork.regions import Lines, Region, corner, regions
from app.brickwork.sizes import CATALOGUE
from app.brickwork.stretch import IDENTITY
from app.brickwork.turning import turned_points
from app.brickwork.units import Trims, Units
from app.panel.geometry import brick_field, openings_polygon, outline_polygon
from app.panel.size import BrickSize
from app.panel.tolerance import TOLERANCE
from app.panel.values import Panel

SMALLEST_CUT = 0.25
"""Inches; a piece thinner than this is not a brick (common practice)."""


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
    brick_area: float
    least_piece: float
    smallest_cut: float
    bond: Bond
    lines: Lines
    place: Place = ALONE

    @cached_property
    def courses(self) -> tuple[Course, ...]:
        """Courses of the field from the lowest to the highest that the brick field reaches; empty for no field."""
        if self.field.is_empty:
            return ()
        origin, gauge, height = self.origin[1], self.size.gauge, self.size.height.inches
        up = self.lines.up
        low, high = up.nominal(self.field.bounds[1] - height), up.nominal(self.field.bounds[3])
        first = floor((low - origin + TOLERANCE) / gauge) + 1
        last = floor((high - origin - TOLERANCE) / gauge)
        bottoms = [float(up.real(origin + k * gauge)) for k in range(first, last + 1)]
        return tuple(Course(first + k, bottom, bottom + height) for k, bottom in enumerate(bottoms))

    @cached_property
    def area(self) -> Area:
        """All areas of the face, square inches."""
        return Area(
            panel=outline_polygon(self.panel).area,
            openings=openings_polygon(self.panel).area,
            field=self.field.area,
            brick=self.brick_area,
            left_out=float(areas(self.left_out).sum()),
        )

    @property
    def origin(self) -> tuple[float, float]:
        """Lower-left corner of the field's cell 0 in course 0, face frame, inches."""
        return self.lines.origin

    @cached_property
    def states(self) -> States:
        """How every control line fares, met or missed, with the joints as they are."""
        if self.field.is_empty:
            return States()
        lines = self.lines
        return states(self.panel, self.field, self.size, self.bond, self.origin, lines.across, lines.up)

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


def lay_out(
    panel: Panel,
    sizes: Mapping[str, BrickSize] = CATALOGUE,
    bonds: Mapping[str, Bond] = BONDS,
    place: Place = ALONE,
) -> Layout:
    """Lay the panel's face: clip every unit of every region to it and sort the pieces.

    `sizes` and `bonds` have the panel's own by name; `place` says where the wall's bond runs. An empty brick field
    gives an empty layout. Raises KeyError for a size or bond that is not known; `panel.check.checked` and the project
    file reader refuse those before.
    """
    size, bond = sizes[panel.field.size], bonds[panel.field.bond]
    field = brick_field(panel, size.head_joint.inches)
    origin = _origin(panel, field, place)
    lines = _lines(panel, field, size, bond, Lines(origin), place)
    shares = tuple(regions(panel, field, lines, sizes, bonds))
    limits = _limits(panel)
    parts = [Part.of(k, region, limits) for k, region in enumerate(shares)]
    units, trims, left_out = assemble(parts)
    return Layout(
        panel=panel,
        size=size,
        field=field,
        regions=shares,
        units=units,
        trims=trims,
        left_out=left_out,
        brick_area=sum(part.brick_area for part in parts),
        least_piece=limits.least_of(size),
        smallest_cut=limits.smallest_cut,
        bond=bond,
        lines=lines,
        place=place,
    )


def _limits(panel: Panel) -> Limits:
    smallest = panel.smallest_cut.inches if panel.smallest_cut is not None else SMALLEST_CUT
    return Limits(smallest, panel.least_piece.inches if panel.least_piece is not None else None, panel.fit.closers)


def _origin(panel: Panel, field: BaseGeometry, place: Place) -> tuple[float, float]:
    """A typed origin goes before the wall's, the wall's before the field's own corner."""
    if panel.field.origin is not None or place.origin is None:
        return corner(panel.field.origin, field)
    return place.origin


def _lines(panel: Panel, field: BaseGeometry, size: BrickSize, bond: Bond, nominal: Lines, place: Place) -> Lines:
    """The lines as they stand once joints have given: the wall's courses before the panel's own."""
    wanted = replace(panel.fit, courses=panel.fit.courses and place.courses is None)
    if field.is_empty or not (wanted.courses or wanted.heads or place.courses):
        return nominal
    is_pinned = panel.field.origin is not None or place.origin is not None
    asked, start = replace(panel, fit=wanted), _start(field, size, bond, nominal.origin)
    fitted = panel_fit(asked, field, size, bond, start, place.give, is_pinned)
    gives = has_plain_courses(bond, size)
    up = fitted.vertical.stretch if fitted.vertical else (place.courses if gives else None) or IDENTITY
    return replace(nominal, across=fitted.horizontal.stretch if fitted.horizontal else IDENTITY, up=up)


def _start(field: BaseGeometry, size: BrickSize, bond: Bond, origin: tuple[float, float]) -> tuple[float, float]:
    """The origin moved by whole modules to the field's corner: only joints that the panel has can give."""
    steps = bond.across[0].inches(size), size.gauge
    moved = [at + round((low - at) / step) * step for at, low, step in zip(origin, field.bounds, steps, strict=False)]
    return moved[0], moved[1]


def whole_outlines(layout: Layout, zone: int) -> Floats:
    """Corners of the whole units of one region, shape (units, 4, 2), face frame, inches, anticlockwise."""
    units, region = layout.units, layout.regions[zone]
    chosen = (units.zone == zone) & ~units.is_trimmed
    bond = region.bond
    size = np.array([cell.face(region.size) for cell in bond.cells])[units.cell[chosen]]
    centre = np.column_stack([units.x + units.width / 2, units.y + units.height / 2])[chosen]
    corners = np.array([[-1, -1], [1, -1], [1, 1], [-1, 1]]) / 2 * size[:, None, :]
    outlines: Floats = centre[:, None, :] + turned_points(corners.reshape(-1, 2), bond.turn).reshape(-1, 4, 2)
    return outlines
