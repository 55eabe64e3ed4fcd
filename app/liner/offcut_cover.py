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
    """How often each pattern is cut, and how few sheets it takes at least; no counts where none were found."""

    times: tuple[int, ...]
    bound: int


def cover(patterns: Sequence[Filled], wanted: Sequence[int], nodes: int) -> Cover:
    """Choose patterns so that at least `wanted[k]` of each shape k are cut; the best after `nodes` branches."""
    columns = [Counter(place.shape for place in pattern.taken) for pattern in patterns]
    found = cheapest(columns, wanted, nodes=nodes)
    times = () if found.amounts is None else tuple(round(count) for count in found.amounts.tolist())
    return Cover(times, ceil(found.bound - _WHOLE))
