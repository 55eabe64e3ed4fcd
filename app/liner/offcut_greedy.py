"""Filling unpacked sheets one shape after another: quick, and never more than one sheet a trim."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field

from app.liner.offcut_atoms import Atoms
from app.liner.offcut_places import Packing, Placed
from app.panel.tolerance import TOLERANCE

_MANY = 300
"""Different shapes of one panel, beyond which only the first order is tried."""


@dataclass(frozen=True, slots=True)
class Filled:
    """A sheet with what is cut from it; `free` is what is left, square inches."""

    taken: tuple[Placed, ...]
    atoms: Atoms = field(compare=False)
    free: float = field(compare=False)

    def with_one(self, new: Placed, area: float) -> "Filled":
        """The sheet with one more shape cut from it."""
        atoms = self.atoms.with_all(new.atoms)
        return Filled((*self.taken, new), atoms, self.free - area)


def empty(packing: Packing) -> Filled:
    """A sheet from the pack."""
    return Filled((), Atoms(0, 0), packing.mould.area)


def fill(packing: Packing, wanted: Sequence[int], started: Iterable[Filled] = ()) -> tuple[Filled, ...]:
    """Cut `wanted[k]` of each shape k, large ones first, out of `started` sheets and then new ones.

    The best of several orders, each shape out of the fullest sheet in which it has a place.
    """
    started = tuple(started)
    plans = (tuple(_fill(packing, wanted, started, order)) for order in _orders(packing))
    return min(plans, key=len)


def _orders(packing: Packing) -> Iterator[list[int]]:
    """By area; by how few places a shape has; by how much of the sheet's height, and of its length, it takes."""
    shapes, every = packing.shapes, range(len(packing.shapes))
    yield list(every)
    if len(every) > _MANY:
        return
    yield sorted(every, key=lambda k: len(packing.places[k]))
    for axis in (1, 0):
        extents = [round(shapes[k].extent[axis], 4) for k in every]
        yield sorted(every, key=extents.__getitem__, reverse=True)


def _fill(packing: Packing, wanted: Sequence[int], started: tuple[Filled, ...], order: list[int]) -> Iterator[Filled]:
    open_sheets: dict[Filled, int] = {}
    for sheet in started:
        _add(open_sheets, sheet, 1)
    for k in order:
        _cut(packing, k, wanted[k], open_sheets)
    for sheet, count in open_sheets.items():
        yield from [sheet] * count


def _cut(packing: Packing, k: int, left: int, sheets: dict[Filled, int]) -> None:
    """Cut shape k `left` times; sheets that are filled alike are dealt with at once."""
    area, full = packing.shapes[k].area, set[Filled]()
    while left:
        found = _fullest(packing, k, sheets, full)
        sheet, place = found or (empty(packing), packing.places[k][0])
        count = min(left, sheets[sheet]) if found else 1
        if found:
            _add(sheets, sheet, -count)
        _add(sheets, sheet.with_one(place, area), count)
        left -= count


def _fullest(packing: Packing, k: int, sheets: dict[Filled, int], full: set[Filled]) -> tuple[Filled, Placed] | None:
    """The fullest sheet with a place for shape k; those without one are noted in `full`."""
    area = packing.shapes[k].area
    roomy = [sheet for sheet in sheets if sheet.free >= area - TOLERANCE and sheet not in full]
    for sheet in sorted(roomy, key=lambda one: one.free):
        for place in packing.places[k]:
            if packing.fits(place, sheet.atoms, sheet.taken):
                return sheet, place
        full.add(sheet)
    return None


def _add(sheets: dict[Filled, int], sheet: Filled, count: int) -> None:
    sheets[sheet] = sheets.get(sheet, 0) + count
    if not sheets[sheet]:
        del sheets[sheet]
