"""The fewest sheets whose patterns give all shapes: a mixed-integer program, solved by HiGHS."""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import csc_array

from app.liner.offcut_greedy import Filled

_WHOLE = 1e-6
"""How far the program's figures may be from whole numbers."""

_NODES = 2_000
"""Branches of the program; what is not proven by then is left open, the same on every machine."""


@dataclass(frozen=True, slots=True)
class Cover:
    """How often each pattern is cut, and how few sheets it takes at least; no counts where none were found in time."""

    times: tuple[int, ...]
    bound: int


def cover(patterns: Sequence[Filled], wanted: Sequence[int], seconds: float) -> Cover:
    """Choose patterns so that at least `wanted[k]` of each shape k are cut; stops after `seconds`."""
    found = milp(
        np.ones(len(patterns)),
        constraints=LinearConstraint(_held(patterns, len(wanted)), np.array(wanted), np.inf),
        integrality=np.ones(len(patterns)),
        bounds=Bounds(0, max(wanted)),
        options={"time_limit": seconds, "node_limit": _NODES},
    )
    bound = 0 if found.mip_dual_bound is None else ceil(float(found.mip_dual_bound) - _WHOLE)
    times = () if found.x is None else tuple(round(x) for x in found.x.tolist())
    return Cover(times, bound)


def _held(patterns: Sequence[Filled], shapes: int) -> csc_array:
    """How many of each shape each pattern holds."""
    counts = [Counter(place.shape for place in pattern.taken) for pattern in patterns]
    column = [n for n, held in enumerate(counts) for _ in held]
    row = [shape for held in counts for shape in held]
    times = [count for held in counts for count in held.values()]
    return csc_array((times, (row, column)), shape=(shapes, len(patterns)))
