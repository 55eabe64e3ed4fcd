"""The fewest sheets whose patterns give all shapes: a mixed-integer program, solved."""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil

from app.liner.offcut_greedy import Filled
from app.liner.programs import cheapest

_WHOLE = 1e-6
"""How far the program's figures may be from whole numbers."""


@dataclass(frozen=True, slots=True)
class Cover:
    """How often each pattern is cut, and how few sheets it takes at least; no counts where none were found in time."""

    times: tuple[int, ...]
    bound: int


def cover(patterns: Sequence[Filled], wanted: Sequence[int], seconds: float) -> Cover:
    """Choose patterns so that at least `wanted[k]` of each shape k are cut; stops after `seconds`."""
    columns = [Counter(place.shape for place in pattern.taken) for pattern in patterns]
    found = cheapest(columns, wanted, seconds=seconds)
    times = () if found.amounts is None else tuple(round(count) for count in found.amounts.tolist())
    return Cover(times, ceil(found.bound - _WHOLE))
