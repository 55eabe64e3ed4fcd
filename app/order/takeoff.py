"""The takeoff: what some panels need, counted from their layouts and sheet plans."""

from collections import Counter
from collections.abc import Iterator, Sequence

import numpy as np

from app.brickwork.bond import KINDS, STANDING
from app.brickwork.lattice import Ints
from app.brickwork.layout import Layout
from app.brickwork.returns import Return, corner_units, returns, size_of
from app.liner.offcut_values import CuttingPlan
from app.liner.values import SheetPlan
from app.order.corners import corner_lines
from app.order.packs import brick_packs, overage
from app.order.values import Line, Takeoff
from app.panel.project import Liner, Order

SQUARE_INCHES_PER_SQUARE_FOOT = 144
CUBIC_INCHES_PER_CUBIC_FOOT = 1728
SQUARE_METRES_PER_SQUARE_FOOT = 0.09290304
KILOGRAMS_PER_POUND = 0.45359237
"""Both exact by the international yard and pound agreement of 1959."""

Counts = Counter[tuple[str, str]]


def takeoff(
    layouts: Sequence[Layout],
    plans: Sequence[SheetPlan],
    cuttings: Sequence[CuttingPlan],
    order: Order,
    liner: Liner,
    length_unit: str = "in",
) -> Takeoff:
    """Bricks by size and kind, corner units by hand, liner sheets by mould, face area and liner mass of all panels.

    Every count is a sum over panels; overage and packs are taken once, from the sum. A project whose `length_unit` is
    metric has its area in m2 and its mass in kg. No lines for no panels.
    """
    if not layouts:
        return Takeoff(())
    is_metric = length_unit not in ("in", "ft")
    around = [returns(layout) for layout in layouts]
    lines = [
        *_brick_lines(layouts, around, order),
        *corner_lines(layouts, around, order),
        *_sheet_lines(cuttings, order),
    ]
    return Takeoff((*lines, _face_line(layouts, is_metric), _mass_line(plans, cuttings, liner, is_metric)))


def _brick_lines(layouts: Sequence[Layout], around: Sequence[tuple[Return, ...]], order: Order) -> Iterator[Line]:
    """Sizes in the order of their names, kinds in the order of `KINDS`; corner units left out, return faces in."""
    whole, trimmed = Counter[tuple[str, str]](), Counter[tuple[str, str]]()
    for layout, found in zip(layouts, around, strict=True):
        _count_units(layout, corner_units(found), whole, trimmed)
        _count_pieces(layout, found, whole, trimmed)
    for size, kind in sorted({*whole, *trimmed}, key=lambda key: (key[0], KINDS.index(key[1]))):
        counted = whole[size, kind], trimmed[size, kind]
        net, extra = sum(counted), overage(sum(counted), order.overage_percent)
        yield Line(
            item=f"Thin brick {size}, {kind}",
            kind=kind,
            size=size,
            net=net,
            overage=extra,
            order=net + extra,
            unit="each",
            packs=brick_packs(net + extra, order),
            note=_brick_note(kind, *counted),
        )


def _count_units(layout: Layout, corners: Ints, whole: Counts, trimmed: Counts) -> None:
    """Add the layout's units but its corner units to the counts by size and kind."""
    units = layout.units
    is_flat = np.ones(len(units), dtype=np.bool_)
    is_flat[corners] = False
    for zone, region in enumerate(layout.regions):
        for counts, chosen in ((whole, ~units.is_trimmed), (trimmed, units.is_trimmed)):
            of_kind = np.bincount(units.kind[chosen & is_flat & (units.zone == zone)], minlength=len(KINDS)).tolist()
            counts.update(
                {(region.size.name, kind): count for kind, count in zip(KINDS, of_kind, strict=True) if count}
            )


def _count_pieces(layout: Layout, found: tuple[Return, ...], whole: Counts, trimmed: Counts) -> None:
    """Add what stands on the return faces behind the corner units: stretchers of the corner unit's size."""
    for one in found:
        for piece in one.pieces:
            counts = trimmed if piece.is_trimmed else whole
            counts[size_of(layout, piece.unit).name, "stretcher"] += 1


def _brick_note(kind: str, whole: int, trimmed: int) -> str:
    notes = [f"{whole} whole, {trimmed} trimmed; a trimmed piece is counted as one brick"]
    if kind == "header":
        notes.append("half-length unit")
    if kind in STANDING:
        notes.append("set with its length up the face")
    return "; ".join(notes)


def _sheet_lines(cuttings: Sequence[CuttingPlan], order: Order) -> Iterator[Line]:
    used, placed = Counter[tuple[str, str]](), Counter[tuple[str, str]]()
    for cutting in cuttings:
        used.update(cutting.counts)
        placed.update(cutting.placed_counts)
    for (size, bond), net in sorted(used.items()):
        extra = overage(net, order.overage_percent)
        yield Line(
            item=f"Liner sheet {size}, {bond}",
            kind="",
            size=size,
            net=net,
            overage=extra,
            order=net + extra,
            unit="sheet",
            note=f"sheets to unpack for {placed[size, bond]} places on the bed: trims are cut from what others leave",
        )


def _face_line(layouts: Sequence[Layout], is_metric: bool) -> Line:
    inches = sum(layout.area.panel - layout.area.openings for layout in layouts)
    feet = inches / SQUARE_INCHES_PER_SQUARE_FOOT
    area, unit = (feet * SQUARE_METRES_PER_SQUARE_FOOT, "m2") if is_metric else (feet, "sq ft")
    return Line("Face of panels", "", "", area, 0, area, unit, note="openings taken out; for information")


def _mass_line(plans: Sequence[SheetPlan], cuttings: Sequence[CuttingPlan], liner: Liner, is_metric: bool) -> Line:
    """Mass of the sheets unpacked: their area times the liner's thickness and density, laps left out."""
    area = sum(
        cutting.counts[kind.size, kind.bond] * kind.area
        for plan, cutting in zip(plans, cuttings, strict=True)
        for kind in plan.types
    )
    pounds = area * liner.thickness.inches / CUBIC_INCHES_PER_CUBIC_FOOT * liner.density_lb_ft3
    mass, unit = (pounds * KILOGRAMS_PER_POUND, "kg") if is_metric else (pounds, "lb")
    note = "all sheets used, offcuts too; laps and pocket walls left out; for information"
    return Line("Liner to recycle", "", "", mass, 0, mass, unit, note=note)
