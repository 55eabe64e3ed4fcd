"""The pole of a wall's drawing as a handle: what a drag of it shows, and where it snaps."""

import json
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from app.brickwork.layout import Layout
from app.brickwork.wall import is_continuous
from app.drawing.drawing import Drawing
from app.drawing.marks import SMALL
from app.drawing.wall_lines import course_feet, meetings
from app.drawing.wall_strips import DATUM_MM, FAR_MM, Places, numbered_every
from app.panel.project import Wall
from app.web.words import listed

NAMED = 3
"""Heads and sills that are named; of more, how many."""

MOST = 400
"""Ways to meet a head or a sill that are sent with a page."""


@dataclass(frozen=True, slots=True)
class Handle:
    """The pole in the svg's own units, y down; `lines` are course lines and the datum that a drag shows moved."""

    x: str
    y: str
    width: str
    height: str
    lines: str
    datum_line: str
    words_x: str
    words_y: str
    words_size: str
    data: str


def pole_handle(layouts: Sequence[Layout], places: Places, drawn: Drawing, wall: Wall, lowest: float) -> Handle | None:
    """None for a wall none of whose panels takes its courses from it: nothing would move."""
    following = [
        (layout, place)
        for layout, place in zip(layouts, places, strict=True)
        if is_continuous(layout.panel) and layout.courses
    ]
    if not following:
        return None
    mm, datum = drawn.scale.inches_per_mm, drawn.height - (wall.datum.inches - lowest)
    left = -(FAR_MM + DATUM_MM) * mm
    return Handle(
        x=f"{left:.4f}",
        y="0",
        width=f"{-left:.4f}",
        height=f"{drawn.height:.4f}",
        lines=" ".join(segment for layout, place in following for segment in _lines(layout, place, drawn)),
        datum_line=f"M{left:.4f} {datum:.4f}H{drawn.width:.4f}",
        words_x=f"{1.5 * mm:.4f}",
        words_y=f"{datum - 1.2 * mm:.4f}",
        words_size=f"{1.2 * SMALL * mm:.4f}",
        data=json.dumps({"datum": wall.datum.inches, "ways": _ways(layouts)}),
    )


def _lines(layout: Layout, place: tuple[float, float], drawn: Drawing) -> Iterator[str]:
    """The numbered courses across this panel."""
    (x, base), every = place, numbered_every(layout.size.gauge, drawn.scale)
    for number, y in course_feet(layout, base, base + layout.panel.height).items():
        if number % every == 0 and y >= base:
            yield f"M{x:.3f} {drawn.height - y:.3f}h{layout.panel.width:.3f}"


def _ways(layouts: Sequence[Layout]) -> list[tuple[float, float, str]]:
    return [(round(way.by, 8), way.gauge, _met(way.words)) for way in meetings(layouts)[:MOST]]


def _met(words: tuple[str, ...]) -> str:
    if len(words) <= NAMED:
        return listed(words)
    return f"{', '.join(words[:NAMED])} and {len(words) - NAMED} more"
