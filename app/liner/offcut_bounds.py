"""What no cutting plan can do with less."""

from math import ceil

from app.liner.offcut_places import Packing
from app.panel.tolerance import TOLERANCE


def area_bound(packing: Packing) -> int:
    """As many sheets as have the area of all trims."""
    return _sheets_for(packing, sum(shape.area * shape.count for shape in packing.shapes))


def apart_bound(packing: Packing) -> int:
    """One sheet for each of the trims of which no two find place in one sheet, and by area for those that find place
    beside none of them; the larger of two ways to choose them.
    """
    every = range(len(packing.shapes))
    by_area = list(every)
    by_places = sorted(every, key=lambda k: len(packing.places[k]))
    return max(_apart(packing, order) for order in (by_area, by_places))


def _apart(packing: Packing, order: list[int]) -> int:
    chosen: list[int] = []
    for k in order:
        if not any(can_share(packing, k, other) for other in (k, *chosen)):
            chosen.append(k)
    alone = [k for k in order if k not in chosen and not any(can_share(packing, k, other) for other in chosen)]
    shapes = packing.shapes
    return sum(shapes[k].count for k in chosen) + _sheets_for(
        packing, sum(shapes[k].area * shapes[k].count for k in alone)
    )


def can_share(packing: Packing, one: int, two: int) -> bool:
    """Whether a sheet has place for both shapes, or twice for the same one."""
    if packing.shapes[one].area + packing.shapes[two].area > packing.mould.area + TOLERANCE:
        return False
    first, second = packing.places[one], packing.places[two]
    return any(packing.fits(a, b.atoms, (b,)) for a in first for b in second)


def _sheets_for(packing: Packing, area: float) -> int:
    return ceil(area / packing.mould.area - TOLERANCE)
