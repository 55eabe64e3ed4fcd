"""Results of cutting trims out of unpacked sheets. A sheet's own frame is its mould's, joints nominal, inches."""

from collections import Counter
from dataclasses import dataclass
from functools import cached_property

from app.liner.cuts import Ring


@dataclass(frozen=True, slots=True)
class Taken:
    """One laid sheet's trim as it is cut out of an unpacked sheet.

    `number` is the laid sheet's place in the laying order. `rings` are its outlines and holes in the frame of the
    unpacked sheet, `steps` how many whole steps of the bond along and up it lies there from where it would lie in a
    sheet of its own. `area` is in square inches.
    """

    number: int
    steps: tuple[int, int]
    rings: tuple[Ring, ...]
    area: float


@dataclass(frozen=True, slots=True)
class CutSheet:
    """One unpacked sheet: size and bond of its mould, and all that is cut from it, the largest first.

    `owner` is the number of the laid sheet with the largest trim in it: the unpacked sheet is fetched for that one.
    """

    owner: int
    size: str
    bond: str
    taken: tuple[Taken, ...]

    @property
    def is_shared(self) -> bool:
        """Whether more than one laid sheet comes out of it."""
        return len(self.taken) > 1


@dataclass(frozen=True)
class CuttingPlan:
    """Out of which unpacked sheets the laid sheets of one panel come, in the order of their owners.

    `placed` counts laid sheets, `naive` is one unpacked sheet for each of them, `used` the sheets to unpack, and
    `area_bound` <= `bound` <= `used` <= `naive`: by area alone, and the best that is proven no plan can do with less.
    """

    sheets: tuple[CutSheet, ...]
    placed: int
    naive: int
    used: int
    area_bound: int
    bound: int

    @property
    def is_proven(self) -> bool:
        """Whether no plan needs fewer sheets."""
        return self.used == self.bound

    @property
    def gap(self) -> float:
        """How many sheets may be too many, as a share of the bound; 0 for no sheets."""
        return (self.used - self.bound) / self.bound if self.bound else 0.0

    @cached_property
    def counts(self) -> Counter[tuple[str, str]]:
        """Sheets to unpack by size and bond."""
        return Counter((sheet.size, sheet.bond) for sheet in self.sheets)

    @cached_property
    def placed_counts(self) -> Counter[tuple[str, str]]:
        """Laid sheets by size and bond."""
        placed = Counter[tuple[str, str]]()
        for sheet in self.sheets:
            placed[sheet.size, sheet.bond] += len(sheet.taken)
        return placed

    @cached_property
    def _sources(self) -> dict[int, int]:
        return {taken.number: sheet.owner for sheet in self.sheets for taken in sheet.taken}

    def source_of(self, number: int) -> int | None:
        """The laid sheet out of whose unpacked sheet this one is cut; None where it has one to itself or is the owner.

        Raises KeyError for a number that is not laid.
        """
        owner = self._sources[number]
        return None if owner == number else owner

    def taken(self, number: int) -> Taken:
        """How this laid sheet is cut; raises KeyError for a number that is not laid."""
        return self._taken[number]

    @cached_property
    def _taken(self) -> dict[int, Taken]:
        return {taken.number: taken for sheet in self.sheets for taken in sheet.taken}
