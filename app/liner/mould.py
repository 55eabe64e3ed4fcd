"""The sheet that a mould makes: a block of whole repeats of a bond, toothed where the bond is.

A sheet has a frame of its own, turned so that its length runs along a lattice vector. Lines of repeats follow that
vector; each next line is one `step` on.
"""

from dataclasses import dataclass, replace
from functools import lru_cache
from math import atan2, degrees, gcd, hypot

import numpy as np
import shapely

from app.brickwork.bond import Bond
from app.brickwork.lattice import Floats, Ints, Lattice, lattice
from app.brickwork.turning import turned_points
from app.panel.rings import turns_only
from app.panel.size import BrickSize
from app.panel.tolerance import TOLERANCE

_REACH = 12
"""How many steps across are searched for the most level lattice vector, with at most one step up, so that lines stay
next to each other and a sheet is one piece; plain courses find theirs at one step."""

_DIGITS = 9
"""Decimals of an inch to which corners of cells are brought before they are joined: 40 times finer than 25 nm."""


@dataclass(frozen=True, slots=True)
class Basis:
    """Two lattice vectors in steps (across, up) of the bond: along a sheet's lines, and from a line to the next."""

    along: tuple[int, int]
    step: tuple[int, int]

    def lines(self, i: Ints, j: Ints) -> tuple[Ints, Ints]:
        """Place on its line, and line, of each repeat that is i across and j up."""
        (a, b), (c, d) = self.along, self.step
        return i * d - j * c, j * a - i * b

    def bond_steps(self, place: Ints, line: Ints) -> Floats:
        """Steps (across, up) of the repeats at these places of these lines."""
        return np.outer(place, self.along) + np.outer(line, self.step)


@dataclass(frozen=True, slots=True)
class Mould:
    """One kind of sheet, inches, in the sheet's frame, which is the face frame turned back by `turn` degrees.

    `length` is one step along a line, `step` from a line to the next; a sheet has `repeats` of the bond along and up.
    `outline` is the sheet whose first repeat is at 0, 0, and `area` is the area of its cells.
    """

    basis: Basis
    turn: float
    length: float
    step: tuple[float, float]
    repeats: tuple[int, int]
    outline: Floats
    area: float

    @property
    def size(self) -> tuple[float, float]:
        """Steps from sheet to sheet along and up, inches."""
        return self.repeats[0] * self.length, self.repeats[1] * self.step[1]

    def first_place(self, line: Ints) -> Ints:
        """Where each line of a sheet (counted from its lowest) starts: the first place not left of the sheet's 0."""
        first: Ints = np.ceil(-line * self.step[0] / self.length - TOLERANCE).astype(np.int64)
        return first

    def shifts(self, lat: Lattice) -> Floats:
        """Where each repeat of a sheet lies from its first one, bond's own frame, inches, shape (repeats, 2)."""
        along, up = self.repeats
        line = np.repeat(np.arange(up), along)
        place = np.tile(np.arange(along), up) + self.first_place(line)
        shifts: Floats = self.basis.bond_steps(place, line) @ np.array([lat.across, lat.up])
        return shifts


@lru_cache(maxsize=256)
def mould(bond: Bond, size: BrickSize, columns: int, rows: int) -> Mould:
    """The sheet of at most `columns` cells along and `rows` courses up, but at least one whole repeat each way.

    Cells along are counted in the bond's first course. A bond without level courses (herringbone) runs its lines along
    the most level lattice vector no longer than `columns` head modules, and has lines enough for a sheet in one piece.
    """
    shape = _without_outline(bond, size, columns, rows)
    return replace(shape, outline=_outline(shape, bond, size, lattice(bond, size, (0.0, 0.0))))


def sheet_steps(bond: Bond, size: BrickSize, columns: int, rows: int) -> tuple[float, float]:
    """Steps from sheet to sheet along and up, inches, found without the sheet's outline."""
    return _without_outline(bond, size, columns, rows).size


def _without_outline(bond: Bond, size: BrickSize, columns: int, rows: int) -> Mould:
    lat = lattice(bond, size, (0.0, 0.0))
    vectors = turned_points(np.array([lat.across, lat.up]), bond.turn)
    basis = _basis(vectors, columns * size.head_module)
    along = np.array(basis.along) @ vectors
    turn = degrees(atan2(along[1], along[0])) if abs(along[1]) > TOLERANCE else 0.0
    step = turned_points(np.array([basis.step]) @ vectors, -turn)[0]
    length = hypot(*along)
    repeats = _repeats(bond, lat, (columns, rows), columns * size.head_module / length)
    repeats = repeats[0], max(repeats[1], abs(basis.along[0]))
    return Mould(
        basis=basis,
        turn=turn,
        length=length,
        step=(float(step[0]), float(step[1])),
        repeats=repeats,
        outline=np.zeros((0, 2)),
        area=repeats[0] * repeats[1] * abs(lat.determinant),
    )


def _basis(vectors: Floats, longest: float) -> Basis:
    """Along the courses where there are any, else along the most level lattice vector with at most one step up; and a
    partner that spans the lattice with it."""
    has_courses = abs(vectors[0, 1]) <= TOLERANCE
    along = (1, 0) if has_courses else _most_level(vectors, longest, 1)
    return Basis(along, _partner(along, vectors))


def _most_level(vectors: Floats, longest: float, up: int = _REACH) -> tuple[int, int]:
    """Steps of the most level lattice vector that is not longer than `longest`; the shortest one if all are."""
    found = []
    for i in range(-_REACH, _REACH + 1):
        for j in range(-up, up + 1):
            x, y = (i * vectors[0] + j * vectors[1]).tolist()
            if gcd(i, j) == 1 and x > TOLERANCE:
                span = hypot(x, y)
                slope = 0.0 if span > longest + TOLERANCE else round(abs(y) / x, 6)
                found.append((span > longest + TOLERANCE, slope, round(span, 6), i, j))
    return min(found)[3:]


def _partner(along: tuple[int, int], vectors: Floats) -> tuple[int, int]:
    """The lattice vector that spans the lattice together with `along` and starts a line's length or less from it."""
    (a, b), span = along, np.array(along) @ vectors
    c, d = next((c, d) for c in range(-_REACH, _REACH + 1) for d in range(-_REACH, _REACH + 1) if a * d - b * c == 1)
    share = float(np.array([c, d]) @ vectors @ span) / float(span @ span)
    back = int(np.floor(share + TOLERANCE))
    return c - back * a, d - back * b


@lru_cache(maxsize=256)
def pitches(bond: Bond, size: BrickSize, longest: float) -> tuple[float, float]:
    """Steps along x and up y, inches, after which the bond repeats, or most nearly does within `longest` inches."""
    lat = lattice(bond, size, (0.0, 0.0))
    vectors = turned_points(np.array([lat.across, lat.up]), bond.turn)
    level, upright = _most_level(vectors, longest), _most_level(vectors[:, ::-1], longest)
    return abs(float((np.array(level) @ vectors)[0])), abs(float((np.array(upright) @ vectors)[1]))


def _repeats(bond: Bond, lat: Lattice, cells: tuple[int, int], fitting: float) -> tuple[int, int]:
    """Whole repeats along and up in a sheet of (columns, rows) cells; `fitting` of them are as long as the columns.

    A bond without level courses takes as many repeats in all as have columns x rows cells.
    """
    columns, rows = cells
    if not lat.is_level:
        along = max(1, int(fitting + TOLERANCE))
        return along, max(1, columns * rows // len(bond.cells) // along)
    bottoms = np.round(lat.y, _DIGITS)
    in_first_course, courses = int(np.count_nonzero(bottoms == bottoms.min())), len(np.unique(bottoms))
    return max(1, columns // in_first_course), max(1, rows // courses)


def _outline(shape: Mould, bond: Bond, size: BrickSize, lat: Lattice) -> Floats:
    """The joined cells of the sheet's repeats, corner by corner, anticlockwise, in the sheet's frame."""
    shift = shape.shifts(lat)
    low = np.array([(cell.x.inches(size), cell.y.inches(size)) for cell in bond.cells])
    high = low + np.array([(cell.width.inches(size), cell.height.inches(size)) for cell in bond.cells])
    lows, highs = ((shift[:, None, :] + corner).reshape(-1, 2).round(_DIGITS) for corner in (low, high))
    block = shapely.union_all(shapely.box(*lows.T, *highs.T))
    ring = shapely.get_coordinates(shapely.orient_polygons(block))[:-1]
    return turned_points(turns_only(ring), bond.turn - shape.turn)
