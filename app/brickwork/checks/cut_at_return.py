"""Corner units that are cut, or missing, at a return: long and short legs do not fall on the bond there."""

from collections.abc import Iterator

from app.brickwork.findings import Finding
from app.brickwork.layout import Layout
from app.brickwork.returns import Return, corner_units, returns
from app.lengths import format_length


def check(layout: Layout, unit: str) -> Iterator[Finding]:
    """One finding a return with cut corner units, one with bare courses, one with units that would turn two corners."""
    found = returns(layout)
    for one in found:
        yield from _cut(one, unit)
        yield from _bare(one)
    legs = [(leg.unit, leg.bottom, one) for one in found for leg in one.legs]
    if len(legs) > len(corner_units(found)):
        yield from _twice(legs)


def _cut(one: Return, unit: str) -> Iterator[Finding]:
    if not one.cut:
        return
    shortest = min(one.cut, key=lambda leg: leg.face_leg)
    text = (
        f"Cut corner units at {one.name}: {len(one.cut)} of {len(one.legs)}; the shortest shows"
        f" {format_length(shortest.face_leg, unit)} x {format_length(shortest.height, unit)} on the face"
        f" (course {shortest.course})."
    )
    yield Finding("cut-at-return", "warning", one.edge_at, shortest.bottom + shortest.height / 2, text, one.name)


def _bare(one: Return) -> Iterator[Finding]:
    if one.bare:
        text = f"Courses without a corner unit at {one.name}: {len(one.bare)}; the lowest is course {one.bare[0]}."
        yield Finding("bare-at-return", "warning", one.edge_at, (one.bottom + one.top) / 2, text, one.name)


def _twice(legs: list[tuple[int, float, Return]]) -> Iterator[Finding]:
    """One finding for each pair of returns, at its lowest unit."""
    first: dict[int, tuple[float, Return]] = {}
    told: set[str] = set()
    for unit, bottom, one in sorted(legs, key=lambda row: row[1]):
        if unit in first and (about := f"{first[unit][1].name} and {one.name}") not in told:
            told.add(about)
            text = f"One brick reaches both {about}: no corner unit turns two corners."
            yield Finding("two-returns", "warning", one.edge_at, bottom, text, about)
        first.setdefault(unit, (bottom, one))
