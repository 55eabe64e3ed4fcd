"""How few unpacked sheets of one mould give all its trims, and the best bound that is proven."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from app.liner.mould import Mould
from app.liner.offcut_bounds import apart_bound, area_bound
from app.liner.offcut_cover import cover
from app.liner.offcut_greedy import Filled, empty, fill
from app.liner.offcut_patterns import TooMany, patterns
from app.liner.offcut_places import Packing
from app.liner.offcut_trims import Shape

_MOST_TRIED = 80_000
"""Places tried for one list of patterns: up to half a second for a sheet divided very finely."""

_LEAST_SHARES = (0.0, 0.02, 0.05, 0.1, 0.15, 0.25)
"""Where not all patterns can be listed, those of shapes larger than such a share of a sheet are: the small ones are
then cut from what is left, and the bound is one for the large ones, so for all."""


@dataclass(frozen=True, slots=True)
class Solved:
    """Sheets that give every trim of one mould once, and two bounds; `area_bound` is by area alone."""

    sheets: tuple[Filled, ...]
    area_bound: int
    bound: int


def solve(mould: Mould, shapes: Sequence[Shape], nodes: int) -> Solved:
    """Few sheets for these shapes of one mould, the largest first; none for no shapes.

    Patterns of sheets are listed and the fewest chosen; whatever happens there, never more than the quick way needs.
    """
    if not shapes:
        return Solved((), 0, 0)
    packing, wanted = Packing(mould, shapes), [shape.count for shape in shapes]
    sheets = fill(packing, wanted)
    by_area = area_bound(packing)
    if len(sheets) == by_area:
        return Solved(sheets, by_area, by_area)
    bound = max(by_area, apart_bound(packing))
    if len(sheets) > bound:
        sheets, proven = _improved(packing, wanted, sheets, nodes)
        bound = max(bound, proven)
    return Solved(sheets, by_area, bound)


def _improved(
    packing: Packing, wanted: Sequence[int], sheets: tuple[Filled, ...], nodes: int
) -> tuple[tuple[Filled, ...], int]:
    """The better of these sheets and those by patterns, and the bound that the patterns prove."""
    for size in _sizes(packing):
        try:
            listed = patterns(packing, wanted[:size], _MOST_TRIED)
        except TooMany:
            continue
        chosen = cover(listed, wanted[:size], nodes)
        started = _without_surplus(packing, listed, chosen.times, wanted)
        if chosen.times:
            rest = [0] * size + list(wanted[size:])
            sheets = min(sheets, fill(packing, rest, started), key=len)
        return sheets, chosen.bound
    return sheets, 0


def _sizes(packing: Packing) -> Iterator[int]:
    """How many of the largest shapes are listed, fewer and fewer."""
    last = 0
    for share in _LEAST_SHARES:
        size = sum(shape.area > share * packing.mould.area for shape in packing.shapes)
        if size and size != last:
            yield size
        last = size


def _without_surplus(
    packing: Packing, listed: Sequence[Filled], times: Sequence[int], wanted: Sequence[int]
) -> list[Filled]:
    """The sheets of the chosen patterns, less what they give more than is wanted."""
    left, sheets = list(wanted), []
    for pattern, count in zip(listed, times, strict=False):
        for _ in range(count):
            sheet = empty(packing)
            for place in pattern.taken:
                if left[place.shape]:
                    left[place.shape] -= 1
                    sheet = sheet.with_one(place, packing.shapes[place.shape].area)
            sheets += [sheet] if sheet.taken else []
    return sheets
