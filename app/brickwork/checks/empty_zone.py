"""A zone that no brick is laid in: drawn where there is no brick field, or wholly under later zones."""

from collections.abc import Iterator

from app.brickwork.findings import Finding
from app.brickwork.layout import Layout


def check(layout: Layout, unit: str) -> Iterator[Finding]:
    """One finding a zone, at the face's lower left corner as it has no place of its own."""
    del unit
    if not layout.panel.zones:
        return
    laid = {layout.regions[zone].mark for zone in set(layout.units.zone.tolist())}
    for zone in layout.panel.zones:
        if zone.mark not in laid:
            text = f"Zone {zone.mark} has no brick: it lies outside the brick field, or under a later zone."
            yield Finding("empty-zone", "warning", 0.0, 0.0, text, f"zone {zone.mark}")
