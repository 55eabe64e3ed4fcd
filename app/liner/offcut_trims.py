"""What is left of each sheet of one mould, brought to the frame of an unpacked sheet, joints as they were moulded."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import reduce

import numpy as np
import shapely

from app.brickwork.lattice import Floats
from app.brickwork.regions import Region
from app.brickwork.stretch import Stretch
from app.brickwork.turning import turned_points
from app.liner.cuts import Ring
from app.liner.mould import Mould
from app.liner.values import Sheet
from app.panel.rings import from_least, ring_area
from app.panel.tolerance import TOLERANCE

_DIGITS = 5
"""Decimals of an inch within which two trims count as one shape: far finer than a knife, ten times the tolerance."""


_AREA = 2
"""Dimensions of an area: rings that touch can leave lines and points besides."""


@dataclass(frozen=True, slots=True)
class Trim:
    """The trim of a laid sheet where it lies in a sheet of its own, inches; `rings` are outlines and holes."""

    number: int
    rings: tuple[Floats, ...]
    area: float


@dataclass(frozen=True, slots=True)
class Shape:
    """Trims that are equal up to whole steps of the bond.

    `rings` are as the first of them lies in its own sheet; each of `members` is moved from there by its `away`, steps
    along and up.
    """

    rings: tuple[Floats, ...]
    area: float
    members: tuple[int, ...]
    away: tuple[tuple[int, int], ...]

    @property
    def count(self) -> int:
        return len(self.members)

    @property
    def extent(self) -> tuple[float, float]:
        """How long and how high it is, inches."""
        points = np.concatenate(self.rings)
        length, height = np.ptp(points, axis=0).tolist()
        return length, height

    def polygon(self) -> shapely.Geometry:
        """The shape; what lies in a hole of another part counts."""
        rings = [shapely.Polygon(ring) for ring in self.rings]
        parts = shapely.get_parts(reduce(shapely.symmetric_difference, rings))
        return shapely.multipolygons(parts[shapely.get_dimensions(parts) == _AREA])


def trims_of(region: Region, shape: Mould, sheets: Iterable[Sheet]) -> Iterator[Trim]:
    """The trim of each sheet that has one in the mould's frame; none for no sheets."""
    low = shape.outline.min(axis=0)
    for sheet in filter(lambda one: one.is_trimmed, sheets):
        at = _unturned(_nominal(region, np.array(sheet.outline)), shape.turn).min(axis=0) - low
        outer, holes = (
            [_unturned(_nominal(region, np.array(ring)), shape.turn) - at for ring in rings]
            for rings in (sheet.trim, sheet.holes)
        )
        area = sum(map(ring_area, outer)) - sum(map(ring_area, holes))
        yield Trim(sheet.number, (*outer, *holes), area)


def shapes_of(trims: Iterable[Trim], shape: Mould) -> tuple[Shape, ...]:
    """Trims grouped into equal shapes, the largest first; of equal area the one that is laid first."""
    found: dict[tuple[Ring, ...], list[tuple[Trim, tuple[int, int]]]] = {}
    for trim in trims:
        place, line = _steps_to(trim, shape)
        shift = np.array([place * shape.length + line * shape.step[0], line * shape.step[1]])
        found.setdefault(_key(trim.rings, shift), []).append((trim, (place, line)))
    shapes = [_shape(same) for same in found.values()]
    return tuple(sorted(shapes, key=lambda one: (-round(one.area, _DIGITS), one.members[0])))


def _shape(same: list[tuple[Trim, tuple[int, int]]]) -> Shape:
    (first, (place, line)), *_ = same
    away = tuple((p - place, k - line) for _, (p, k) in same)
    return Shape(first.rings, first.area, tuple(trim.number for trim, _ in same), away)


def _steps_to(trim: Trim, shape: Mould) -> tuple[int, int]:
    """Whole steps along and up to the trim's lower left."""
    x, y = np.min([ring.min(axis=0) for ring in trim.rings], axis=0).tolist()
    line = int(np.floor(y / shape.step[1] + 10 * TOLERANCE))
    return int(np.floor((x - line * shape.step[0]) / shape.length + 10 * TOLERANCE)), line


def _key(rings: tuple[Floats, ...], shift: Floats) -> tuple[Ring, ...]:
    """The same for rings that are the same once they are moved back, wherever each starts."""
    return tuple(
        sorted(from_least(list(map(tuple, (np.round(ring - shift, _DIGITS) + 0.0).tolist()))) for ring in rings)
    )


def _unturned(points: Floats, turn: float) -> Floats:
    return turned_points(points, -turn)


def _nominal(region: Region, ring: Floats) -> Floats:
    """The ring before joints gave; slanted edges bend where the give changes, so they get corners there."""
    if region.across.is_identity and region.up.is_identity:
        return ring
    bent = _bent(ring, region.across, region.up)
    return np.column_stack([region.across.nominal(bent[:, 0]), region.up.nominal(bent[:, 1])])


def _bent(ring: Floats, across: Stretch, up: Stretch) -> Floats:
    """The ring with a corner wherever a slanted edge crosses a line at which the give changes."""
    corners: list[Floats] = []
    for start, end in zip(ring, np.roll(ring, -1, axis=0), strict=True):
        span = end - start
        corners.append(start[None])
        if np.abs(span).min() > TOLERANCE:
            knots = [(np.array(s.real_knots) - at) / d for s, at, d in zip((across, up), start, span, strict=True)]
            share = np.unique(np.concatenate(knots))
            corners.append(start + share[(share > 0) & (share < 1), None] * span)
    return np.concatenate(corners)
