"""Trims in the sheet's own frame, as it comes from its pack, and which of them are equal."""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from app.brickwork.lattice import Floats
from app.brickwork.layout import Layout
from app.brickwork.regions import Region
from app.liner.cuts import Ring
from app.liner.values import Sheet, SheetPlan

_TICKS, _OFF_TIE = 1e4, 0.137
"""Trims are equal to a ten-thousandth of an inch; a little is added before rounding, as lines at whole 1/64 in. or
thirds then lie far from where rounding turns."""

_STRAIGHT = 1e-6
"""Sine of a turn that is none: far over float round-off, far under that between chords of an arc."""


@dataclass(frozen=True, slots=True)
class OwnTrim:
    """Equal trims of one region's kind of sheet: outline and rings of the first, and the numbers of all.

    Measured from the sheet's starting corner, away from it and up from it, joints nominal; inches.
    """

    region: Region
    outline: Ring
    rings: tuple[Ring, ...]
    sheets: tuple[int, ...]


def own_trims(layout: Layout, plan: SheetPlan) -> tuple[OwnTrim, ...]:
    """Trimmed sheets by equal trims, each in order of its first sheet; none for no sheets or only full ones."""
    regions = {region.mark: region for region in layout.regions}
    found: dict[tuple[object, ...], tuple[Region, list[Floats], list[int]]] = {}
    for sheet in plan.sheets:
        if sheet.is_trimmed:
            region = regions[sheet.region]
            rings = list(_own_rings(sheet, region))
            key = region.size.name, region.bond.name, tuple(sorted(map(_key, rings[1:])))
            found.setdefault(key, (region, rings, []))[2].append(sheet.number)
    return tuple(
        OwnTrim(region, _ring(rings[0]), tuple(map(_ring, rings[1:])), tuple(numbers))
        for region, rings, numbers in found.values()
    )


def _own_rings(sheet: Sheet, region: Region) -> Iterator[Floats]:
    """The sheet's outline, then the rings of its trim."""
    rings = [np.array(ring) for ring in (sheet.outline, *sheet.trim, *sheet.holes)]
    if not (region.across.is_identity and region.up.is_identity):
        rings = [np.column_stack([region.across.nominal(r[:, 0]), region.up.nominal(r[:, 1])]) for r in rings]
    start = (rings[0] * sheet.away).min(axis=0)
    yield rings[0] * sheet.away - start
    yield from (_turns_only(ring * sheet.away - start) for ring in rings[1:])


def _turns_only(ring: Floats) -> Floats:
    """The ring without corners at which it runs straight on."""
    on = np.concatenate([ring[1:], ring[:1]]) - ring
    back = np.concatenate([on[-1:], on[:-1]])
    lengths = np.hypot(on[:, 0], on[:, 1])
    across = np.abs(back[:, 0] * on[:, 1] - back[:, 1] * on[:, 0])
    turns: Floats = ring[across > _STRAIGHT * lengths * np.concatenate([lengths[-1:], lengths[:-1]])]
    return turns


def _key(ring: Floats) -> bytes:
    """The same for rings with the same corners, wherever they start."""
    ticks = np.rint(ring * _TICKS + _OFF_TIE).astype(np.int64)
    first = int(np.lexsort(ticks.T)[0]) if len(ticks) else 0
    return np.concatenate([ticks[first:], ticks[:first]]).tobytes()


def _ring(points: Floats) -> Ring:
    return tuple((x, y) for x, y in points.tolist())
