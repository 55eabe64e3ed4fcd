"""Ways to cut a brick that help, found one after the other where there are too many to list (column generation).

The linear program over the ways so far prices the pieces; then the way worth most is looked for. Where none is worth
more than a brick, the linear optimum bounds every cutting; before that, divided by the best worth, it still does
(Farley's bound).
"""

from collections.abc import Mapping, Sequence
from math import ceil

import numpy as np
from numpy.typing import NDArray
from scipy.optimize import linprog
from scipy.sparse import csr_array

from app.order.saw_stock import Item, Stock, Way
from app.order.saw_worth import worth_most

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
    rows = [_gives(items, way) for way in ways]
    need = np.array([wanted[item] for item in items], dtype=float)
    for _ in range(MOST_ROUNDS):
        answer = linprog(np.ones(len(rows)), A_ub=csr_array(-np.array(rows).T), b_ub=-need, method="highs")
        way, best = worth_most(stock, items, wanted, -answer.ineqlin.marginals)
        bound = max(bound, answer.fun / max(1.0, best))
        if best <= 1.0 + _ENOUGH or way in ways or not stock.holds(way):
            break
        ways.append(way)
        rows.append(_gives(items, way))
    return ways, ceil(bound - _ROUND_OFF)


def _gives(items: Sequence[Item], way: Way) -> NDArray[np.float64]:
    return np.array([way.count(item) for item in items], dtype=float)
