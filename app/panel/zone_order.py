"""Zones lie one on another in the order of their list: the last lies on top."""

from app.panel.faults import Fault, Refused
from app.panel.marks import marked
from app.panel.values import Zone
from app.panel.wording import quoted


def stepped(zones: tuple[Zone, ...], mark: str, step: int) -> tuple[Zone, ...]:
    """The zones with one of them a place up (1) or down (-1); raises Refused at `zone` where there is no place."""
    place = zones.index(marked(zones, mark, "zone"))
    other = place + step
    if not 0 <= other < len(zones):
        end, expected = ("on top of", "above") if step > 0 else ("under", "below")
        raise Refused([Fault("zone", f"{quoted(mark)} {end} all zones", f"a zone with another {expected} it")])
    order = list(zones)
    order[place], order[other] = order[other], order[place]
    return tuple(order)


def neighbour(zones: tuple[Zone, ...], mark: str, step: int) -> str:
    """The mark of the zone just above (1) or below (-1); empty where there is none."""
    marks = [zone.mark for zone in zones]
    other = marks.index(mark) + step if mark in marks else -1
    return marks[other] if 0 <= other < len(marks) else ""
