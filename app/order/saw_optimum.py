"""The fewest bricks: a mixed-integer program over the ways to cut one brick, solved by HiGHS with its proven bound."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import ceil

import numpy as np

from app.liner.programs import cheapest
from app.order.saw_columns import columns, gives
from app.order.saw_stock import FACTORY_ENDS, Item, Stock, Way, Ways, bricks_of, first_fit, just_wanted, longest_first

MOST_TRIED = 100_000
"""Pieces tried in listing all ways to cut a brick; where it takes more, only ways that help are found."""

NODES = 40
"""Branches after which the best so far is taken, with the bound proven so far; common jobs need one."""

_ROUND_OFF = 1e-6


@dataclass(frozen=True, slots=True)
class Yield:
    """How bricks are cut up, the number that no way can go below, and what first-fit decreasing takes."""

    ways: Ways
    bound: int
    first_fit: int


def fewest(stock: Stock, wanted: Mapping[Item, int]) -> Yield:
    """The fewest bricks that give all pieces wanted; never more than first-fit decreasing takes.

    Nothing wanted takes no brick. Each piece must be no longer than a brick.
    """
    items = longest_first(wanted)
    if not items:
        return Yield((), 0, 0)
    greedy = just_wanted(first_fit(stock, wanted), wanted)
    every = all_ways(stock, items, wanted, MOST_TRIED)
    ways, bound = (every, 0) if every is not None else columns(stock, items, wanted, [way for _, way in greedy])
    best, proven = _solved(items, wanted, ways)
    best, bound = just_wanted(best, wanted), max(bound, proven if every is not None else 0)
    chosen = min((greedy, best), key=lambda found: (bricks_of(found), len(found))) if best else greedy
    return Yield(chosen, min(max(bound, 1), bricks_of(chosen)), bricks_of(greedy))


def all_ways(stock: Stock, items: Sequence[Item], wanted: Mapping[Item, int], most: int) -> list[Way] | None:
    """Every way to cut a brick to which no wanted piece could be added; None where more than `most` pieces are tried.

    Ways with room for another piece are never needed: too many pieces of a length do no harm.
    """
    found: list[Way] = []
    open_ways: list[tuple[int, Way, int, int]] = [(0, (), stock.room, FACTORY_ENDS)]
    for _ in range(most // max(len(items), 1)):
        start, way, room, ends = open_ways.pop()
        fitting = [k for k, item in enumerate(items) if _fits(stock, item, room, ends, way, wanted)]
        if not fitting:
            found.append(way)
        for k in (k for k in fitting if k >= start):
            item = items[k]
            open_ways.append((k, (*way, item), room - stock.taken(item), ends - item.has_factory_end))
        if not open_ways:
            return found
    return None


def _fits(stock: Stock, item: Item, room: int, ends: int, way: Way, wanted: Mapping[Item, int]) -> bool:
    has_room = stock.taken(item) <= room and (ends > 0 or not item.has_factory_end)
    return has_room and way.count(item) < wanted[item]


def _solved(items: Sequence[Item], wanted: Mapping[Item, int], ways: Sequence[Way]) -> tuple[Ways, int]:
    """The best use of these ways, nothing where none was found in time, and the bound for them."""
    answer = cheapest([gives(items, way) for way in ways], [wanted[item] for item in items], nodes=NODES)
    bound = ceil(answer.bound - _ROUND_OFF)
    if answer.amounts is None:
        return (), bound
    times = np.rint(answer.amounts).astype(int).tolist()
    return tuple((count, way) for count, way in zip(times, ways, strict=True) if count), bound
