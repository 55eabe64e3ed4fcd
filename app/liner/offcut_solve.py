"""How few unpacked sheets of one mould give all its trims, and the best bound that is proven."""

from collections.abc import Sequence
from dataclasses import dataclass

from app.liner.mould import Mould
from app.liner.offcut_bounds import apart_bound, area_bound
from app.liner.offcut_greedy import Filled, fill
from app.liner.offcut_places import Packing
from app.liner.offcut_trims import Shape


@dataclass(frozen=True, slots=True)
class Solved:
    """Sheets that give every trim of one mould once, and two bounds; `area_bound` is by area alone."""

    sheets: tuple[Filled, ...]
    area_bound: int
    bound: int


def solve(mould: Mould, shapes: Sequence[Shape]) -> Solved:
    """Few sheets for these shapes of one mould; none for no shapes."""
    if not shapes:
        return Solved((), 0, 0)
    packing = Packing(mould, shapes)
    sheets = fill(packing, [shape.count for shape in shapes])
    by_area = area_bound(packing)
    bound = max(by_area, apart_bound(packing)) if len(sheets) > by_area else by_area
    return Solved(sheets, by_area, bound)
