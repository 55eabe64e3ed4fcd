"""The pieces of one brick that are worth most together: a bounded knapsack, solved exactly by dynamic programming."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import gcd

import numpy as np
from numpy.typing import NDArray

from app.order.saw_stock import FACTORY_ENDS, Item, Stock, Way

FINEST = 4_000
"""A brick is divided into no more units than this."""

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class _Step:
    """Taking `count` of an item at once: its place in the items, units of room and factory ends that takes, worth."""

    item: int
    count: int
    room: int
    ends: int
    worth: float


def worth_most(
    stock: Stock, items: Sequence[Item], wanted: Mapping[Item, int], worth: Floats, *, is_short: bool = True
) -> tuple[Way, float]:
    """The pieces of one brick that are worth most, no more of a kind than wanted, and their worth together.

    Exact where kerf and lengths share a unit that divides a brick into at most `FINEST`, as for 1/16 in. and 1 mm with
    kerfs of 1/64 in. or 0.1 mm. Else pieces count a little short, so that the worth is an upper bound and the pieces
    may be too long for the brick; or, not `is_short`, a little long, so that they come out of it.
    """
    unit = _unit(stock, items)
    steps = tuple(_steps(stock, items, wanted, worth, unit, is_short))
    best = np.zeros((FACTORY_ENDS + 1, stock.room // unit + 1))
    rows, columns = best.shape
    taken = []
    for step in steps:
        offered = best[: rows - step.ends, : max(columns - step.room, 0)] + step.worth
        so_far = best[step.ends :, step.room :]
        taken.append(offered > so_far)
        np.maximum(so_far, offered, out=so_far)
    return _way(items, steps, taken, best.shape), float(best[-1, -1])


def cells(stock: Stock, items: Sequence[Item]) -> int:
    """How much `worth_most` has to look at: so many units of a brick for each item."""
    return (stock.room // _unit(stock, items) + 1) * len(items)


def _unit(stock: Stock, items: Sequence[Item]) -> int:
    return max(gcd(stock.room, *(stock.taken(item) for item in items)), stock.room // FINEST)


def _steps(
    stock: Stock, items: Sequence[Item], wanted: Mapping[Item, int], worth: Floats, unit: int, is_short: bool
) -> Iterator[_Step]:
    """One, two, four and so on of each item, and the rest: every number of them is a sum of some."""
    for k, item in enumerate(items):
        if worth[k] <= 0:
            continue
        room = stock.taken(item) // unit if is_short else -(-stock.taken(item) // unit)
        left, count = min(wanted[item], stock.times(item, stock.room, FACTORY_ENDS)), 1
        while left > 0:
            count = min(count, left)
            ends = count * item.has_factory_end
            yield _Step(k, count, count * room, ends, count * float(worth[k]))
            left, count = left - count, count * 2


def _way(
    items: Sequence[Item], steps: Sequence[_Step], taken: Sequence[NDArray[np.bool_]], shape: tuple[int, ...]
) -> Way:
    """What was taken, found backwards from the whole brick."""
    ends, room, way = shape[0] - 1, shape[1] - 1, list[Item]()
    for step, is_taken in zip(reversed(steps), reversed(taken), strict=True):
        before = ends - step.ends, room - step.room
        if min(before) >= 0 and is_taken[before]:
            ends, room = before
            way += [items[step.item]] * step.count
    return tuple(sorted(way, reverse=True))
