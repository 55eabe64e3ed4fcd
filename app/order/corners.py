"""Corner units of returns, by size and hand: what to order of them."""

from collections import Counter
from collections.abc import Iterator, Sequence

from app.brickwork.layout import Layout
from app.brickwork.returns import Leg, Return, size_of
from app.order.packs import overage
from app.order.values import Line
from app.panel.project import Order

Counts = Counter[tuple[str, str]]


def corner_lines(layouts: Sequence[Layout], around: Sequence[tuple[Return, ...]], order: Order) -> Iterator[Line]:
    """A line a size and hand, left before right; `around` has the returns of each layout; no lines for no returns.

    A corner unit is one piece that turns the corner, so it is not among the stretchers or headers. It has no packs:
    how corner units are packed differs from the flat ones and is the maker's to say (common practice).
    """
    all_of, cut, shortened = Counts(), Counts(), Counts()
    for layout, found in zip(layouts, around, strict=True):
        for one in found:
            for leg in one.legs:
                key = size_of(layout, leg.unit).name, one.hand
                all_of[key] += 1
                cut[key] += leg.is_cut
                shortened[key] += _is_shortened_only(leg)
    for size, hand in sorted(all_of):
        net = all_of[size, hand]
        extra = overage(net, order.overage_percent)
        yield Line(
            item=f"Corner unit, {hand}, {size}",
            kind=f"corner {hand}",
            size=size,
            net=net,
            overage=extra,
            order=net + extra,
            unit="each",
            note=_note(net, cut[size, hand], shortened[size, hand]),
        )


def _is_shortened_only(leg: Leg) -> bool:
    return leg.is_shortened and not leg.is_cut


def _note(net: int, cut: int, shortened: int) -> str:
    notes = [f"{net - cut - shortened} whole, {cut + shortened} trimmed; one piece turns the corner"]
    if shortened:
        notes.append(f"{shortened} of the trimmed only at the return's depth")
    return "; ".join(notes)
