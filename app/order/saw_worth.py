"""The pieces of one brick that are worth most together: a bounded knapsack, solved exactly by dynamic programming."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import gcd

import numpy as np
from numpy.typing import NDArray

from app.order.saw_stock import FACTORY_ENDS, Item, Stock, Way

FINEST = 20_000
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


def worth_most(stock: Stock, items: Sequence[Item], wanted: Mapping[Item, int], worth: Floats) -> tuple[Way, float]:
    """The pieces of one brick that are worth most, no more of a kind than wanted, and their worth together.

    Exact where kerf and lengths share a unit that divides a brick into at most `FINEST`, as for 1/16 in. and 1 mm with
    kerfs of 1/64 in. or 0.1 mm; else pieces count a little short, so that the worth is an upper bound and the pieces
    may be too long for the brick.
    """
    unit = max(gcd(stock.room, *(stock.taken(item) for item in items)), stock.room // FINEST)
    steps = tuple(_steps(stock, items, wanted, worth, unit))
    best = np.zeros((FACTORY_ENDS + 1, stock.room // unit + 1))
    taken = []
    for step in steps:
        offered = np.full_like(best, -1.0)
        rows, columns = best.shape
        offered[step.ends :, step.room :] = best[: rows - step.ends, : columns - step.room] + step.worth
        taken.append(offered > best)
        best = np.maximum(best, offered)
    return _way(items, steps, taken, best.shape), float(best[-1, -1])


def _steps(
    stock: Stock, items: Sequence[Item], wanted: Mapping[Item, int], worth: Floats, unit: int
) -> Iterator[_Step]:
    """One, two, four and so on of each item, and the rest: every number of them is a sum of some."""
    for k, item in enumerate(items):
        if worth[k] <= 0:
            continue
        left, count = min(wanted[item], stock.times(item, stock.room, FACTORY_ENDS)), 1
        while left > 0:
            count = min(count, left)
            room, ends = count * (stock.taken(item) // unit), count * item.has_factory_end
            yield _Step(k, count, room, ends, count * float(worth[k]))
            left, count = left - count, count * 2


def _way(
    items: Sequence[Item], steps: Sequence[_Step], taken: Sequence[NDArray[np.bool_]], shape: tuple[int, ...]
) -> Way:
    """What was taken, found backwards from the whole brick."""
    ends, room, way = shape[0] - 1, shape[1] - 1, list[Item]()
    for step, is_taken in zip(reversed(steps), reversed(taken), strict=True):
        if is_taken[ends, room]:
            ends, room = ends - step.ends, room - step.room
            way += [items[step.item]] * step.count
    return tuple(sorted(way, reverse=True))
