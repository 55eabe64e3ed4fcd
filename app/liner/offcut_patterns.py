"""All fullest ways to cut one unpacked sheet, as long as they are few enough to be listed."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from app.liner.offcut_greedy import Filled, empty
from app.liner.offcut_places import Packing, Placed
from app.panel.tolerance import TOLERANCE

Ways = list[Filled]
"""Sheets with the same shapes cut from them, at other places."""


class TooMany(Exception):
    """More places were tried than allowed, so that some ways to cut a sheet are not known."""


@dataclass(slots=True)
class _Search:
    packing: Packing
    wanted: Sequence[int]
    most: int
    tried: int = 0
    found: list[Filled] = field(default_factory=list)

    def grow(self, ways: Ways, counts: list[int], last: int) -> None:
        """Add shapes from `last` on, one at a time; a way to which none can be added at all is one of the fullest."""
        is_full = True
        for k in range(last, len(self.wanted)):
            more = self._with_one(ways, counts, k)
            if more:
                is_full = False
                self.grow(more, [*counts[:k], counts[k] + 1, *counts[k + 1 :]], k)
        if is_full and not any(self._with_one(ways, counts, k) for k in range(last)):
            self.found.append(ways[0])

    def _with_one(self, ways: Ways, counts: list[int], k: int) -> Ways:
        """All ways with one more of shape k; none where no more of it are wanted."""
        area = self.packing.shapes[k].area
        if counts[k] >= self.wanted[k] or area > ways[0].free + TOLERANCE:
            return []
        self.tried += len(ways) * len(self.packing.places[k])
        if self.tried > self.most:
            raise TooMany
        found = {_cut_away(new): new for new in self._added(ways, k, area)}
        return list(found.values())

    def _added(self, ways: Ways, k: int, area: float) -> Iterator[Filled]:
        for way in ways:
            for place in self.packing.places[k]:
                if self.packing.fits(place, way.atoms, way.taken):
                    yield way.with_one(place, area)


def _cut_away(sheet: Filled) -> int | frozenset[Placed]:
    """What is gone from a sheet; equal for two ways that leave the same."""
    atoms = sheet.atoms
    return atoms.inner if atoms.inner == atoms.outer else frozenset(sheet.taken)


def patterns(packing: Packing, wanted: Sequence[int], most: int) -> list[Filled]:
    """Every fullest choice of shapes that one sheet gives, each once, no more of any than `wanted`.

    Only the first `len(wanted)` shapes count. Raises TooMany if more than `most` places have to be tried.
    """
    search = _Search(packing, wanted, most)
    search.grow([empty(packing)], [0] * len(wanted), 0)
    return search.found
