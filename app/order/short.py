"""The order against what was delivered and what is placed: what is short for the next casting day."""

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence

from app.order.packs import with_overage
from app.order.values import Casting, DayShort, Line, ShortList, Stock
from app.panel.delivery import Delivery

Net = Mapping[str, float]
"""Net by item of some panels together."""

NEAR, GROUPS = 8, 4
"""Every different row costs a saw list; what is short two weeks and more ahead need not be known to the day."""


def casting_days(castings: Sequence[Casting]) -> tuple[str, ...]:
    """The days of panels still to place as they follow, "" (no day) last; none where all are placed."""
    return tuple(sorted({one.cast_on for one in castings if not one.is_placed}, key=lambda day: (day == "", day)))


def castings_so_far(castings: Sequence[Casting]) -> tuple[tuple[int, ...], ...]:
    """The panels, by their places in `castings`, whose takeoffs `short_list` asks for: those placed, then for each
    casting day those placed and all that are cast up to and with it. One empty row for no panels.

    After the first `NEAR` days, days are taken in `GROUPS`: each stands for the last of its group, which errs toward
    ordering early. So there are few different rows however many days there are.
    """
    days = casting_days(castings)
    return tuple(
        tuple(k for k, one in enumerate(castings) if one.is_placed or one.cast_on in days[:upto])
        for upto in (0, *(_upto(day, len(days)) for day in range(len(days))))
    )


def _upto(day: int, days: int) -> int:
    """How many days a day stands for, counted from the first."""
    if day < NEAR:
        return day + 1
    each = -(-(days - NEAR) // GROUPS)
    return min(NEAR + ((day - NEAR) // each + 1) * each, days)


def short_list(
    castings: Sequence[Casting],
    nets: Sequence[Net],
    lines: Sequence[Line],
    deliveries: Sequence[Delivery],
    overage_percent: float,
    today: str,
) -> ShortList:
    """What of each line is on hand, what the panels still to place need day by day, and what is short of that.

    `nets` are the takeoffs of the panels of `castings_so_far`, in their order. Up to a day is needed what placed panels
    and all up to that day take together, overage on it once, less the net that placed panels used: overage of placed
    panels counts on, as broken bricks are not known. So the last day's need and what was used are just the project's
    order, and nothing is short once that was delivered. No day needs more than a later one: what is cut for more panels
    does for fewer. A casting day that is past but whose panels are not placed still counts as the next one; panels
    without a day come last. What is delivered after `today` (ISO 8601) is expected, and not on hand yet. No stock
    for no lines.
    """
    delivered = Counter[str]()
    for delivery in deliveries:
        delivered[delivery.item] += delivery.count if delivery.day <= today else 0
    days = casting_days(castings)
    first = next(iter(days), None)
    return ShortList(
        day=first,
        panels=tuple(one.mark for one in castings if not one.is_placed and one.cast_on == first),
        stock=tuple(_stock(line, delivered[line.item], nets, days, overage_percent) for line in lines),
        unknown=tuple(sorted(set(delivered) - {line.item for line in lines})),
        expected=tuple(delivery for delivery in deliveries if delivery.day > today),
    )


def _stock(line: Line, delivered: float, nets: Sequence[Net], days: Sequence[str], percent: float) -> Stock:
    used, *so_far = _growing([net.get(line.item, 0) for net in nets])
    rows = tuple(_rows(days, so_far, used, delivered, percent))
    return Stock(
        item=line.item,
        unit=line.unit,
        delivered=delivered,
        used=used,
        on_hand=max(delivered - used, 0),
        unnoted=max(used - delivered, 0),
        needed=rows[0].needed if rows else 0,
        short=rows[0].short if rows else 0,
        days=rows,
    )


def _growing(nets: Sequence[float]) -> list[float]:
    """Each no more than any after it."""
    return [min(nets[k:]) for k in range(len(nets))]


def _rows(
    days: Sequence[str], so_far: Sequence[float], used: float, delivered: float, percent: float
) -> Iterator[DayShort]:
    """Needed up to and with each day. Short is reckoned from whole orders, so that no round-off is ever short."""
    for day, net in zip(days, so_far, strict=True):
        ordered = with_overage(net, percent)
        yield DayShort(day, max(ordered - used, 0), max(ordered - max(delivered, used), 0))
