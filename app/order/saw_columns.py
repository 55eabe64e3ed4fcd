"""Ways to cut a brick that help, found one after the other where there are too many to list (column generation).

The linear program over the ways so far prices the pieces; a small integer program looks for the way worth most. Where
none is worth more than a brick, the linear optimum bounds every cutting; before that, divided by the best worth, it
still does (Farley's bound).
"""

from collections.abc import Mapping, Sequence
from math import ceil

import numpy as np
from numpy.typing import NDArray
from scipy.optimize import Bounds, LinearConstraint, linprog, milp
from scipy.sparse import csr_array

from app.order.saw_stock import FACTORY_ENDS, Item, Stock, Way

MOST_ROUNDS = 400
"""Rounds after which the ways found are taken as they are."""

_ENOUGH = 1e-7
"""A way worth so little over a brick does not help."""

_ROUND_OFF = 1e-6


def columns(
    stock: Stock, items: Sequence[Item], wanted: Mapping[Item, int], start: Sequence[Way]
) -> tuple[list[Way], int]:
    """The ways from `start`, which must give every item, with those that help, and the least number of bricks proven.

    The same input gives the same ways.
    """
    ways, bound = list(dict.fromkeys(start)), 0.0
    need = np.array([wanted[item] for item in items], dtype=float)
    for _ in range(MOST_ROUNDS):
        worth, value = _priced(items, need, ways)
        way, best = _worth_most(stock, items, wanted, worth)
        bound = max(bound, value / max(1.0, best))
        if best <= 1.0 + _ENOUGH or way in ways or not stock.holds(way):
            break
        ways.append(way)
    return ways, ceil(bound - _ROUND_OFF)


def _priced(items: Sequence[Item], need: NDArray[np.float64], ways: Sequence[Way]) -> tuple[NDArray[np.float64], float]:
    """What a piece of each item is worth in bricks, and the linear program's optimum."""
    gives = csr_array(np.array([[way.count(item) for way in ways] for item in items], dtype=float))
    answer = linprog(np.ones(len(ways)), A_ub=-gives, b_ub=-need, method="highs")
    return -answer.ineqlin.marginals, float(answer.fun)


def _worth_most(
    stock: Stock, items: Sequence[Item], wanted: Mapping[Item, int], worth: NDArray[np.float64]
) -> tuple[Way, float]:
    """The way to cut a brick whose pieces are worth most together, the longest first, and what they are worth."""
    taken = np.array([stock.taken(item) for item in items], dtype=float) / stock.room
    ends = np.array([item.has_factory_end for item in items], dtype=float)
    answer = milp(
        -worth,
        integrality=np.ones(len(items)),
        bounds=Bounds(0, np.array([wanted[item] for item in items])),
        constraints=LinearConstraint(np.vstack([taken, ends]), ub=np.array([1.0 + 1e-12, FACTORY_ENDS])),
        options={"mip_rel_gap": 0.0},
    )
    counts = np.rint(answer.x).astype(int).tolist()
    way = tuple(item for item, count in zip(items, counts, strict=True) for _ in range(count))
    return way, float(worth @ counts)
