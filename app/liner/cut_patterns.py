"""Unpacked sheets that are cut alike, and where in them the numbers of the laid sheets stand."""

from dataclasses import dataclass
from functools import reduce
from math import hypot

import shapely

from app.liner.offcut_values import CutSheet, CuttingPlan, Taken

_DIGITS = 4
"""Decimals of an inch within which two sheets are cut alike."""

_FINE = 0.25
"""Inches; how near to the roomiest place a number stands."""


@dataclass(frozen=True, slots=True)
class CutPattern:
    """Unpacked sheets that are cut alike, in the order of their owners; each has its trims in the same order."""

    sheets: tuple[CutSheet, ...]

    @property
    def first(self) -> CutSheet:
        return self.sheets[0]

    @property
    def numbers(self) -> tuple[tuple[int, ...], ...]:
        """For each sheet the laid sheets that come out of it, the largest first."""
        return tuple(tuple(taken.number for taken in sheet.taken) for sheet in self.sheets)


def cut_patterns(cutting: CuttingPlan) -> tuple[CutPattern, ...]:
    """Every way in which a sheet is cut for several laid sheets, the commonest first; none where none is shared."""
    found: dict[object, list[CutSheet]] = {}
    for sheet in filter(lambda one: one.is_shared, cutting.sheets):
        found.setdefault(_key(sheet), []).append(sheet)
    patterns = (CutPattern(tuple(map(_in_order, sheets))) for sheets in found.values())
    return tuple(sorted(patterns, key=lambda one: (-len(one.sheets), one.first.owner)))


def _key(sheet: CutSheet) -> object:
    return sheet.size, sheet.bond, tuple(sorted(map(_rings, sheet.taken)))


def _in_order(sheet: CutSheet) -> CutSheet:
    """The sheet with equal trims in the order of where they lie, not of their numbers, so that copies agree."""
    taken = sorted(sheet.taken, key=lambda one: (-round(one.area, _DIGITS), _rings(one)))
    return CutSheet(sheet.owner, sheet.size, sheet.bond, tuple(taken))


def _rings(taken: Taken) -> tuple[tuple[tuple[float, float], ...], ...]:
    """The trim's rings, the same for the same trim at the same place, wherever each starts."""
    rounded = ([(round(x, _DIGITS) + 0.0, round(y, _DIGITS) + 0.0) for x, y in ring] for ring in taken.rings)
    return tuple(sorted(tuple(ring[ring.index(min(ring)) :] + ring[: ring.index(min(ring))]) for ring in rounded))


def roomiest(taken: Taken) -> list[tuple[float, float, float]]:
    """Where each part of a trim has most room for a number, and how far its nearest cut is from there, inches.

    The part with most room comes first.
    """
    shape = reduce(shapely.symmetric_difference, map(shapely.Polygon, taken.rings))
    found = []
    for part in shapely.get_parts(shape):
        (x, y), (near_x, near_y) = shapely.maximum_inscribed_circle(part, _FINE).coords
        found.append((x, y, hypot(near_x - x, near_y - y)))
    return sorted(found, key=lambda place: -round(place[2], 2))
