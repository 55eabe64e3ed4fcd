"""All fullest ways to cut one unpacked sheet, as long as they are few enough to be listed."""

from bisect import bisect_left
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from app.liner.offcut_greedy import Filled, empty
from app.liner.offcut_places import Packing, Placed

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

    def grow(self, ways: Ways, counts: list[int], before: list[int], onward: list[int]) -> None:
        """Add one of the shapes `onward` to the ways to cut a sheet, and so on from it.

        `before` and `onward` had place with fewer shapes; a choice beside which none of them has is one of the fullest.
        """
        least = self.packing.first_within(ways[0].free)
        more = {k: found for k in onward[bisect_left(onward, least) :] if (found := self._with_one(ways, counts, k))}
        if not more and not any(self._with_one(ways, counts, k) for k in before[bisect_left(before, least) :]):
            self.found.append(ways[0])
        rest = list(more)
        for n, k in enumerate(rest):
            self.grow(more[k], [*counts[:k], counts[k] + 1, *counts[k + 1 :]], before + rest[:n], rest[n:])

    def _with_one(self, ways: Ways, counts: list[int], k: int) -> Ways:
        """All ways with one more of shape k; none where no more of it are wanted."""
        if counts[k] >= self.wanted[k]:
            return []
        self.tried += len(ways) * len(self.packing.places[k])
        if self.tried > self.most:
            raise TooMany
        area = self.packing.shapes[k].area
        return list({_cut_away(new): new for new in self._added(ways, k, area)}.values())

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
    search.grow([empty(packing)], [0] * len(wanted), [], list(range(len(wanted))))
    return search.found
