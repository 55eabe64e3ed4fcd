"""Where an opening's sides meet whole brick: the lines of the field's courses and half modules, less the margin."""

from dataclasses import dataclass
from math import ceil, floor

import numpy as np

from app.brickwork.layout import Layout
from app.panel.geometry import kept_margin


@dataclass(frozen=True, slots=True)
class SideLines:
    """Positions in inches where one side of an opening meets brick; `words` name the meeting, and the first of them
    has the number `first` where they are courses."""

    words: str
    at: tuple[float, ...]
    first: int | None = None


def meeting_lines(layout: Layout) -> dict[str, SideLines]:
    """For "left", "right", "bottom" and "top" of an opening: where they meet whole brick.

    A head sits a margin under the foot of a course, a sill a margin over the top of one, a jamb a margin from the end
    of a brick or half bat. Empty for an empty field; no jamb lines in a turned bond.
    """
    joint = layout.size.head_joint.inches
    margin = kept_margin(layout.panel, joint)
    courses = layout.courses
    first = courses[0].course if courses else None
    return {
        "bottom": SideLines("sill on course", tuple(course.top + margin for course in courses), first),
        "top": SideLines("head under course", tuple(course.bottom - margin for course in courses), first),
        "left": SideLines("left jamb at the end of a brick", _jambs(layout, margin - joint)),
        "right": SideLines("right jamb at the start of a brick", _jambs(layout, -margin)),
    }


def _jambs(layout: Layout, shift: float) -> tuple[float, ...]:
    if layout.field.is_empty or layout.bond.turn:
        return ()
    half, origin, across = layout.size.head_module / 2, layout.origin[0], layout.lines.across
    low, high = across.nominal(layout.field.bounds[0]), across.nominal(layout.field.bounds[2])
    steps = np.arange(ceil((low - origin) / half), floor((high - origin) / half) + 1)
    return tuple((across.real(origin + steps * half) + shift).tolist())
