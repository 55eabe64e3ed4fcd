"""Lines of liner: sheets to unpack, by mould; the edge piece that ends courses."""

from collections import Counter
from collections.abc import Iterator, Sequence

from app.order.measured import measured_line
from app.order.packs import overage, reason, sheet_packs
from app.order.rules import CUBIC_INCHES_PER_CUBIC_FOOT, Rules
from app.order.values import TOPICS, Line
from app.order.work import PanelWork


def sheet_lines(works: Sequence[PanelWork], rules: Rules) -> Iterator[Line]:
    """A line a size and bond, with packs where sheets come in packs; none for no sheets."""
    used, placed = Counter[tuple[str, str]](), Counter[tuple[str, str]]()
    areas = {(kind.size, kind.bond): kind.area for work in works for kind in work.plan.types}
    for work in works:
        used.update(work.cutting.counts)
        placed.update(work.cutting.placed_counts)
    for mould, net in sorted(used.items()):
        extra = overage(net, rules.order.overage_percent)
        yield Line(
            item=f"Liner sheet {mould[0]}, {mould[1]}",
            kind="",
            size=mould[0],
            net=net,
            overage=extra,
            order=net + extra,
            unit="sheet",
            packs=sheet_packs(net + extra, rules.order),
            note=_note(placed[mould]),
            reason=reason(net, rules.order.overage_percent),
            weight=rules.weight((net + extra) * liner_pounds(areas[mould], rules)),
            weight_unit=rules.weight_unit,
            topic=TOPICS[2],
        )


def _note(placed: int) -> str:
    places = "1 place" if placed == 1 else f"{placed:,} places"
    return f"sheets to unpack for {places} on the bed: trims are cut from what others leave"


def edge_lines(works: Sequence[PanelWork], rules: Rules) -> Iterator[Line]:
    """The finishing edge piece, where courses stop in the open; no line where none do."""
    by_kind = Counter[str]()
    for work in works:
        by_kind.update(work.edges.by_kind)
    if total := sum(by_kind.values()):
        parts = ((rules.length(length), kind) for kind, length in by_kind.items() if length)
        note = ", ".join(f"{length:,.1f} {unit} {kind}" for (length, unit), kind in parts)
        yield measured_line("Finishing edge piece", total, f"where courses stop in the open: {note}", rules, TOPICS[2])


def mass_line(works: Sequence[PanelWork], rules: Rules) -> Line:
    """Mass of the sheets unpacked, offcuts and all: their area, thickness and density, laps left out."""
    area = sum(work.cutting.counts[kind.size, kind.bond] * kind.area for work in works for kind in work.plan.types)
    mass = rules.weight(liner_pounds(area, rules))
    note = "all sheets used, offcuts too; laps and pocket walls left out; for information"
    return Line("Liner to recycle", "", "", mass, 0, mass, rules.weight_unit, note=note, topic=TOPICS[4])


def liner_pounds(square_inches: float, rules: Rules) -> float:
    """So much liner, as a flat sheet."""
    return square_inches * rules.liner.thickness.inches / CUBIC_INCHES_PER_CUBIC_FOOT * rules.liner.density_lb_ft3
