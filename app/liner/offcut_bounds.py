"""What no cutting plan can do with less."""

from bisect import bisect_left
from math import ceil

from app.liner.offcut_places import Packing
from app.panel.tolerance import TOLERANCE


def area_bound(packing: Packing) -> int:
    """As many sheets as have the area of all trims."""
    return _sheets_for(packing, sum(shape.area * shape.count for shape in packing.shapes))


def apart_bound(packing: Packing) -> int:
    """One sheet for each of the trims of which no two find place in one sheet, and by area for those that find place
    beside none of them.
    """
    shapes, room = packing.shapes, packing.mould.area
    chosen: list[int] = []
    alone = 0.0
    for k, shape in enumerate(shapes):
        if not any(can_share(packing, k, other) for other in (*_no_larger(packing, chosen, room - shape.area), k)):
            chosen.append(k)
    for k in set(range(len(shapes))).difference(chosen):
        if not any(can_share(packing, k, other) for other in _no_larger(packing, chosen, room - shapes[k].area)):
            alone += shapes[k].area * shapes[k].count
    return sum(shapes[k].count for k in chosen) + _sheets_for(packing, alone)


def _no_larger(packing: Packing, chosen: list[int], area: float) -> list[int]:
    return chosen[bisect_left(chosen, packing.first_within(area)) :]


def can_share(packing: Packing, one: int, two: int) -> bool:
    """Whether a sheet has place for both shapes, or twice for the same one."""
    if packing.shapes[one].area + packing.shapes[two].area > packing.mould.area + TOLERANCE:
        return False
    first, second = packing.places[one], packing.places[two]
    return any(packing.fits(a, b.atoms, (b,)) for a in first for b in second)


def _sheets_for(packing: Packing, area: float) -> int:
    return ceil(area / packing.mould.area - TOLERANCE)
