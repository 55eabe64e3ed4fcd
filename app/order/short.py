"""The order against what was delivered and what is placed: what is short for the next casting day."""

from collections import Counter, defaultdict
from collections.abc import Iterator, Mapping, Sequence

from app.order.packs import with_overage
from app.order.values import DayShort, Line, Need, ShortList, Stock
from app.panel.delivery import Delivery

Days = Mapping[str, Mapping[str, float]]
"""Net by item on each casting day, days as they follow."""


def short_list(
    needs: Sequence[Need], lines: Sequence[Line], deliveries: Sequence[Delivery], overage_percent: float
) -> ShortList:
    """What of each line is on hand, what the panels still to place need day by day, and what is short of that.

    A placed panel has used its net; the overage of a day is taken once, on the day's net, as broken bricks are not
    known. A casting day that is past but whose panels are not placed still counts as the next one; panels without a
    day come last. No stock for no lines.
    """
    delivered = Counter[str]()
    for delivery in deliveries:
        delivered[delivery.item] += delivery.count
    days = _days(needs)
    first = next(iter(days), None)
    items = {line.item for line in lines}
    return ShortList(
        day=first,
        panels=tuple(need.mark for need in needs if not need.is_placed and need.cast_on == first),
        stock=tuple(_stock(line, delivered[line.item], needs, days, overage_percent) for line in lines),
        unknown=tuple(sorted(set(delivered) - items)),
    )


def _days(needs: Sequence[Need]) -> Days:
    net: defaultdict[str, defaultdict[str, float]] = defaultdict(lambda: defaultdict(int))
    for need in needs:
        if not need.is_placed:
            for item, count in need.net.items():
                net[need.cast_on][item] += count
            net[need.cast_on].setdefault("", 0)
    return {day: net[day] for day in sorted(net, key=lambda day: (day == "", day))}


def _stock(line: Line, delivered: float, needs: Sequence[Need], days: Days, percent: float) -> Stock:
    used = sum(need.net.get(line.item, 0) for need in needs if need.is_placed)
    on_hand = max(delivered - used, 0)
    rows = tuple(_rows(line.item, on_hand, days, percent))
    return Stock(
        item=line.item,
        unit=line.unit,
        delivered=delivered,
        used=used,
        on_hand=on_hand,
        unnoted=max(used - delivered, 0),
        needed=rows[0].needed if rows else 0,
        short=rows[0].short if rows else 0,
        days=rows,
    )


def _rows(item: str, on_hand: float, days: Days, percent: float) -> Iterator[DayShort]:
    """Needed up to and with each day."""
    needed: float = 0
    for day, net in days.items():
        needed += with_overage(net.get(item, 0), percent)
        yield DayShort(day, needed, max(needed - on_hand, 0))
