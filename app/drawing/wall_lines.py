"""Course lines that run through a wall, and the datums at which they would meet heads and sills."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import ceil

from app.brickwork.layout import Layout
from app.brickwork.wall import is_continuous
from app.drawing.controls import Control, up
from app.panel.tolerance import TOLERANCE

SAME = 1 / 64
"""Inches: two datums this near to each other are one."""


@dataclass(frozen=True, slots=True)
class Meeting:
    """A way up, inches from 0 to under `gauge`, that brings a course line to each head and sill in `words`."""

    by: float
    gauge: float
    words: tuple[str, ...]


def lead_of(layouts: Sequence[Layout]) -> int | None:
    """Which panel's lines are the wall's: the first with brick that takes them from the wall.

    Where none does, the first with brick at all; None for no brick.
    """
    bricked = [k for k, layout in enumerate(layouts) if layout.courses]
    return next((k for k in bricked if is_continuous(layouts[k].panel)), bricked[0] if bricked else None)


def course_feet(layout: Layout, base: float, height: float) -> Mapping[int, float]:
    """Foot of each course of this panel's lines run up a wall of that height, inches, by course number.

    `base` is the height of the panel's foot in the wall.
    """
    gauge, start, lines = layout.size.gauge, layout.origin[1], layout.lines.up
    low, high = (lines.nominal(at - base) - start for at in (0.0, height))
    numbers = range(ceil((low - TOLERANCE) / gauge), ceil((high - TOLERANCE) / gauge))
    return {k: base + float(lines.real(start + k * gauge)) for k in numbers}


def meetings(layouts: Sequence[Layout]) -> tuple[Meeting, ...]:
    """How far up the datum may go so that a course line falls on a head or a sill, the smallest way first.

    Panels that stand on their own do not count. Brick starts a margin above a head, and stops one below a sill. None
    for a wall without heads and sills.
    """
    found: list[Meeting] = []
    for by, gauge, words in sorted(way for layout in layouts for way in _ways(layout)):
        last = found[-1] if found else None
        if last and abs(last.gauge - gauge) < TOLERANCE and by - last.by < SAME:
            found[-1] = Meeting(last.by, gauge, (*last.words, words))
        else:
            found.append(Meeting(by, gauge, (words,)))
    return tuple(found)


def _ways(layout: Layout) -> Iterator[tuple[float, float, str]]:
    if not (is_continuous(layout.panel) and layout.courses):
        return
    for line in up(layout.panel):
        if line.what in ("head", "sill"):
            way = (_stop(layout, line) - layout.origin[1]) % layout.size.gauge
            is_whole = layout.size.gauge - way < TOLERANCE
            yield 0.0 if is_whole else way, layout.size.gauge, f"{line.words} of {layout.panel.mark}"


def _stop(layout: Layout, line: Control) -> float:
    """Where the foot of a course has to be, inches in the face frame, for no brick at the line to be cut."""
    panel, size = layout.panel, layout.size
    margin = panel.margin.inches if panel.margin is not None else size.head_joint.inches
    return line.at + margin if line.what == "head" else line.at - margin - size.height.inches
