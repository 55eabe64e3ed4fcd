"""Where in an unpacked sheet each trim can be cut: whole steps of the bond at which it lies inside, and overlaps."""

from bisect import bisect_left
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import ceil, floor

import numpy as np
import shapely

from app.liner.mould import Mould
from app.liner.offcut_atoms import Atoms, Grid, grid
from app.liner.offcut_overlaps import area_beyond, shared_area
from app.liner.offcut_trims import Shape
from app.panel.tolerance import TOLERANCE

_NEAR = 10 * TOLERANCE
"""How far a box may stand beyond the sheet's, as a share of a step."""

_SHRED = 1e-4
"""Square inches: what a trim is beyond its sheet, or over another, by less is nothing to a knife."""


@dataclass(frozen=True, slots=True, eq=False)
class Placed:
    """A shape at one of the places where it fits into a sheet; `steps` are along and up from where it was laid.

    `coarse` are its atoms in the undivided mould: a few hundred, which tell most shapes apart.
    """

    shape: int
    steps: tuple[int, int]
    atoms: Atoms
    coarse: Atoms


class Packing:
    """All shapes of one mould with their places; whether two overlap is found once for each two and how they lie."""

    def __init__(self, shape: Mould, shapes: Sequence[Shape]) -> None:
        self.shapes = shapes
        self.mould = shape
        self.grid: Grid = grid(shape, [ring for one in shapes for ring in one.rings])
        self._coarse: Grid = grid(shape, [])
        sheet = self.grid.atoms([shape.outline])
        self._beyond = Atoms(~sheet.outer, ~sheet.inner)
        self._outline = shapely.Polygon(shape.outline)
        self._polygons: dict[int, shapely.Geometry] = {}
        self._overlaps: dict[tuple[int, int, int, int], bool] = {}
        self._falling = [-one.area for one in shapes]
        self.places = tuple(tuple(self._places(k)) for k in range(len(shapes)))

    def first_within(self, area: float) -> int:
        """The first shape that is no larger: shapes are ordered from the largest down."""
        return bisect_left(self._falling, -area - TOLERANCE)

    def fits(self, new: Placed, atoms: Atoms, taken: Sequence[Placed]) -> bool:
        """Whether it overlaps none of those already taken, `atoms` being all of theirs together."""
        near = [one for one in taken if new.coarse.outer & one.coarse.outer]
        if any(new.coarse.inner & one.coarse.inner for one in near):
            return False
        if not near or not new.atoms.outer & atoms.outer:
            return True
        if new.atoms.inner & atoms.outer or new.atoms.outer & atoms.inner:
            return False
        return not any(new.atoms.outer & one.atoms.outer and self._overlap(new, one) for one in taken)

    def _places(self, k: int) -> Iterator[Placed]:
        """Every place of shape k, its own first; the shape as it was laid always fits."""
        atoms, coarse = (one.atoms(self.shapes[k].rings) for one in (self.grid, self._coarse))
        yield Placed(k, (0, 0), atoms, coarse)
        for steps in self._steps(k):
            moved = atoms.moved(self.grid.bits(*steps))
            if steps != (0, 0) and self._is_inside(k, steps, moved):
                yield Placed(k, steps, moved, coarse.moved(self._coarse.bits(*steps)))

    def _steps(self, k: int) -> Iterator[tuple[int, int]]:
        """Steps at which the shape's box is inside the sheet's."""
        own = np.concatenate(self.shapes[k].rings)
        (x0, y0), (x1, y1) = own.min(axis=0).tolist(), own.max(axis=0).tolist()
        low, high = self.mould.outline.min(axis=0).tolist(), self.mould.outline.max(axis=0).tolist()
        length, (across, up) = self.mould.length, self.mould.step
        for line in range(ceil((low[1] - y0) / up - _NEAR), floor((high[1] - y1) / up + _NEAR) + 1):
            moved = line * across
            first = ceil((low[0] - x0 - moved) / length - _NEAR)
            for place in range(first, floor((high[0] - x1 - moved) / length + _NEAR) + 1):
                yield place, line

    def _is_inside(self, k: int, steps: tuple[int, int], atoms: Atoms) -> bool:
        if not atoms.outer & self._beyond.outer:
            return True
        if atoms.inner & self._beyond.inner:
            return False
        return area_beyond(self._moved(k, steps), self._outline) <= _SHRED

    def _overlap(self, one: Placed, two: Placed) -> bool:
        if one.atoms.inner & two.atoms.outer or one.atoms.outer & two.atoms.inner:
            return True
        steps = two.steps[0] - one.steps[0], two.steps[1] - one.steps[1]
        key = (one.shape, two.shape, *steps)
        if key not in self._overlaps:
            shared = shared_area(self._moved(one.shape, (0, 0)), self._moved(two.shape, steps))
            self._overlaps[key] = shared > _SHRED
        return self._overlaps[key]

    def _moved(self, k: int, steps: tuple[int, int]) -> shapely.Geometry:
        if k not in self._polygons:
            self._polygons[k] = self.shapes[k].polygon()
        move = steps_in_inches(self.mould, steps)
        return shapely.transform(self._polygons[k], lambda points: points + np.array(move))


def steps_in_inches(shape: Mould, steps: tuple[int, int]) -> tuple[float, float]:
    """How far so many steps along and up are in the sheet's frame."""
    place, line = steps
    return place * shape.length + line * shape.step[0], line * shape.step[1]
