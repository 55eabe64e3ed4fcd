"""Ways to cut a brick that help, found one after the other where there are too many to list (column generation).

The linear program over the ways so far prices the pieces; then the way worth most is looked for. Where none is worth
more than a brick, the linear optimum bounds every cutting; before that, divided by the best worth, it still does
(Farley's bound).
"""

from collections import Counter
from collections.abc import Mapping, Sequence
from math import ceil

from app.liner.programs import cheapest
from app.order.saw_stock import Item, Stock, Way
from app.order.saw_worth import cells, worth_most

MOST_ROUNDS, MOST_CELLS = 200, 45_000_000
"""Rounds after which the ways found are taken as they are, and what is looked at before: some 0.7 s."""

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
    need = [wanted[item] for item in items]
    given = [gives(items, way) for way in ways]
    each, looked = cells(stock, items), 0
    while looked < min(MOST_CELLS, MOST_ROUNDS * each):
        answer = cheapest(given, need, is_whole=False)
        way, best = worth_most(stock, items, wanted, answer.prices)
        looked += each
        bound = max(bound, answer.bound / max(1.0, best))
        if not stock.holds(way):
            way, best = worth_most(stock, items, wanted, answer.prices, is_short=False)
            looked += each
        if best <= 1.0 + _ENOUGH or way in ways:
            break
        ways.append(way)
        given.append(gives(items, way))
    return ways, ceil(bound - _ROUND_OFF)


def gives(items: Sequence[Item], way: Way) -> Mapping[int, int]:
    """How many of each item, by its place in the items, a way gives."""
    return Counter(map(items.index, way))
