"""Lines of flat bricks, by size, kind and colour."""

from collections.abc import Iterator, Sequence

from app.brickwork.bond import STANDING
from app.order.brick_counts import brick_counts
from app.order.packs import brick_packs, overage, reason
from app.order.rules import Rules
from app.order.values import Line
from app.order.weights import brick_pounds
from app.order.work import PanelWork


def brick_lines(works: Sequence[PanelWork], rules: Rules) -> Iterator[Line]:
    """A line a size, kind and colour: bricks set whole and bricks to cut up, cartons and pallets; none for no brick."""
    counts, order = brick_counts(works, rules), rules.order
    sizes = {region.size.name: region.size for work in works for region in work.layout.regions}
    for brick in counts.bricks():
        size, kind, colour = brick[0], brick[1], rules.colour_name(brick[2])
        net = counts.whole[brick] + counts.cut_up[brick]
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
            note=_note(kind, counts.whole[brick], counts.cut_up[brick], counts.pieces[brick]),
            colour=colour,
            reason=reason(net, order.overage_percent),
            weight=rules.weight((net + extra) * brick_pounds(sizes[size], kind, rules)),
            weight_unit=rules.weight_unit,
        )


def _note(kind: str, whole: int, cut_up: int, pieces: int) -> str:
    notes = [f"{whole} whole, {cut_up} to cut into {pieces} trimmed pieces" if pieces else f"{whole} whole"]
    if kind == "header":
        notes.append("half-length unit")
    if kind in STANDING:
        notes.append("set with its length up the face")
    return "; ".join(notes)
