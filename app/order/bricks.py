"""Lines of flat bricks, by size, kind and colour."""

from collections.abc import Iterator, Sequence

from app.brickwork.bond import STANDING
from app.order.brick_counts import BrickCount, brick_counts
from app.order.packs import brick_packs, overage, reason
from app.order.rules import Rules
from app.order.saw_values import SawList
from app.order.values import Line
from app.order.weights import brick_pounds
from app.order.work import PanelWork


def brick_lines(works: Sequence[PanelWork], saw: SawList, rules: Rules) -> Iterator[Line]:
    """A line a size, kind and colour: bricks set whole and bricks to cut up, cartons and pallets; none for no brick."""
    order = rules.order
    sizes = {region.size.name: region.size for work in works for region in work.layout.regions}
    for count in brick_counts([work.face for work in works], saw, rules):
        size, kind, colour, net = count.size, count.kind, count.colour, count.bricks
        extra = overage(net, order.overage_percent)
        yield Line(
            item=", ".join(filter(None, (f"Thin brick {size}", kind, colour))),
            kind=kind,
            size=size,
            net=net,
            overage=extra,
            order=net + extra,
            unit="each",
            packs=brick_packs(net + extra, order),
            note=_note(count),
            colour=colour,
            reason=reason(net, order.overage_percent),
            weight=rules.weight((net + extra) * brick_pounds(sizes[size], kind, rules)),
            weight_unit=rules.weight_unit,
        )


def _note(count: BrickCount) -> str:
    cut = f", {count.cut_up:,} to cut into {count.pieces:,} trimmed {'piece' if count.pieces == 1 else 'pieces'}"
    notes = [f"{count.whole:,} whole{cut if count.pieces else ''}"]
    if count.rubbed:
        notes.append(f"{count.rubbed:,} of the whole ones with a corner rubbed off")
    if count.kind == "header":
        notes.append("half-length unit")
    if count.kind in STANDING:
        notes.append("set with its length up the face")
    return "; ".join(notes)
