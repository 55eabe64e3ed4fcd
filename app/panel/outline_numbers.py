"""Points and edges of an outline by their numbers: point k is where edge k starts."""

from app.panel.faults import Fault, Refused
from app.panel.values import Panel


def existing(number: int, panel: Panel, noun: str) -> int:
    """The number itself, when the outline has a point and an edge of that number; raises Refused at `noun` if not."""
    last = len(panel.outline) - 1
    if 0 <= number <= last:
        return number
    raise Refused([Fault(noun, f"{noun} {number}", f"{noun} 0 to {last} of the outline")])
