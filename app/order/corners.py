"""Corner units of returns, by size, hand and colour: what to order of them."""

from collections import Counter
from collections.abc import Iterator, Sequence

from app.brickwork.returns import Leg, size_of
from app.order.packs import overage, reason
from app.order.rules import Rules
from app.order.values import TOPICS, Line
from app.order.weights import corner_pounds
from app.order.work import PanelWork
from app.panel.size import BrickSize

Counts = Counter[tuple[str, str, int]]


def corner_lines(works: Sequence[PanelWork], rules: Rules) -> Iterator[Line]:
    """A line a size, hand and colour, left before right; no lines for no returns.

    A corner unit is one piece that turns the corner, so it is not among the stretchers or headers. It has no packs:
    how corner units are packed differs from the flat ones and is the maker's to say (common practice).
    """
    all_of, cut, shortened = Counts(), Counts(), Counts()
    sizes: dict[str, BrickSize] = {}
    for work in works:
        for leg, end in ((leg, one.hand) for one in work.face.around for leg in one.legs):
            size = size_of(work.layout, leg.unit)
            unit = size.name, end, int(work.face.colours[leg.unit])
            sizes[size.name] = size
            all_of[unit] += 1
            cut[unit] += leg.is_cut
            shortened[unit] += _is_shortened_only(leg)
    for key, net in sorted(all_of.items()):
        name, hand, colour = key
        extra = overage(net, rules.order.overage_percent)
        yield Line(
            item=", ".join(filter(None, ("Corner unit", hand, name, rules.colour_name(colour)))),
            kind=f"corner {hand}",
            size=name,
            net=net,
            overage=extra,
            order=net + extra,
            unit="each",
            note=_note(net, cut[key], shortened[key]),
            colour=rules.colour_name(colour),
            reason=reason(net, rules.order.overage_percent),
            weight=rules.weight((net + extra) * corner_pounds(sizes[name], rules)),
            weight_unit=rules.weight_unit,
            topic=TOPICS[1],
        )


def _is_shortened_only(leg: Leg) -> bool:
    return leg.is_shortened and not leg.is_cut


def _note(net: int, cut: int, shortened: int) -> str:
    notes = [f"{net - cut - shortened:,} whole, {cut + shortened:,} trimmed; one piece turns the corner"]
    if shortened:
        notes.append(f"{shortened} of the trimmed only at the return's depth")
    return "; ".join(notes)
