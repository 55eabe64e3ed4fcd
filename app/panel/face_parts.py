"""The parts of a face that have brickwork of their own: the field, and every zone by its mark."""

from collections.abc import Callable
from dataclasses import replace

from app.panel.check_marks import FIELD
from app.panel.faults import Fault, Refused
from app.panel.values import Brickwork, Panel
from app.panel.wording import one_of, quoted

PART = f"{FIELD}, or a zone's mark"


def part_work(panel: Panel, part: str) -> Brickwork | None:
    """The brickwork of the field or of a zone, None when there is no such part."""
    works = {FIELD: panel.field} | {zone.mark: zone.work for zone in panel.zones}
    return works.get(part)


def with_work(panel: Panel, part: str, change: Callable[[Brickwork], Brickwork]) -> Panel:
    """The panel with one part's brickwork changed; raises Refused at `part`, naming the parts there are."""
    if part == FIELD:
        return replace(panel, field=change(panel.field))
    if part_work(panel, part) is None:
        raise Refused([Fault("part", quoted(part), one_of([FIELD, *(zone.mark for zone in panel.zones)], part))])
    zones = (replace(zone, work=change(zone.work)) if zone.mark == part else zone for zone in panel.zones)
    return replace(panel, zones=tuple(zones))
