"""Pole and tape of a whole wall: its courses up the left, its panel edges along the foot, words under each panel."""

from collections.abc import Iterator, Mapping, Sequence

import numpy as np

from app.brickwork.layout import Layout
from app.brickwork.wall import is_continuous
from app.drawing.controls import off_course, up
from app.drawing.layers.pole import EVERY, LONG_TICK_MM, TICK_MM
from app.drawing.lettering import fitting, lettered, text_width_mm
from app.drawing.marks import NORMAL, SMALL, Areas, Layer, Mark, Text, box, segments
from app.drawing.scales import Scale
from app.drawing.styles import Style
from app.drawing.wall_lines import SAME, course_feet, lead_of
from app.panel.values import Panel

NEAR_MM, FAR_MM = 3.0, 14.0
"""The pole's two edges, mm left of the first panel."""

NOTCH_MM = 2.2
DATUM_MM = 2.5
"""How far the datum's tick stands out of the pole, mm."""

TAPE_NEAR_MM, TAPE_FAR_MM, FIGURES_MM = 12.0, 15.0, 18.0
"""The tape's two edges and the middle of its figures, mm below the lowest base: the panels' marks stand above it."""

UNDER_MM, LINE_MM, BETWEEN_MM = 3.2, 3.6, 2.0
"""From a panel's foot down to the middle of its mark, from line to line, and between two marks, mm."""

Places = Sequence[tuple[float, float]]


def wall_pole(layouts: Sequence[Layout], places: Places, height: float, scale: Scale) -> Layer:
    """A tick a course of the wall's lines run up its whole height, a notch for every head and sill that follows them.

    An empty layer for no brick.
    """
    lead = lead_of(layouts)
    if lead is None:
        return Layer("pole", ())
    feet = course_feet(layouts[lead], places[lead][1], height)
    ticks = _pole(layouts[lead].size.gauge, feet, height, scale)
    return Layer("pole", (*ticks, *_notches(layouts, places, scale)))


def numbered_every(gauge: float, scale: Scale) -> int:
    """Courses from one number to the next on a wall's pole, so that they stand clear of each other."""
    return next((every for every in EVERY if every * gauge >= 1.3 * SMALL * scale.inches_per_mm), EVERY[-1])


def _pole(gauge: float, feet: Mapping[int, float], height: float, scale: Scale) -> Iterator[Mark]:
    mm, every = scale.inches_per_mm, numbered_every(gauge, scale)
    far = -FAR_MM * mm
    yield box(far, 0, (FAR_MM - NEAR_MM) * mm, height, "pole")
    reach = {k: (TICK_MM if k % every else LONG_TICK_MM) * mm for k in feet}
    yield segments([(far, y, far + reach[k], y) for k, y in feet.items()], "rule")
    for k, y in feet.items():
        if k % every == 0 and 0.5 * SMALL * mm <= y <= height - 0.5 * SMALL * mm:
            yield Text(far + (LONG_TICK_MM + 0.5) * mm, y, str(k), "text", SMALL, "start")


def _notches(layouts: Sequence[Layout], places: Places, scale: Scale) -> Iterator[Mark]:
    """Filled where every head and sill at that height meets a course, open where one does not."""
    missed: dict[int, bool] = {}
    for layout, (_, base) in zip(layouts, places, strict=True):
        lines = up(layout.panel) if is_continuous(layout.panel) and layout.courses else ()
        for line in (line for line in lines if line.what in ("head", "sill")):
            at = round((line.at + base) / SAME)
            missed[at] = missed.get(at, False) or off_course(layout, line) != 0
    yield _triangles([at * SAME for at, is_missed in missed.items() if not is_missed], scale, "met")
    yield _triangles([at * SAME for at, is_missed in missed.items() if is_missed], scale, "missed")


def _triangles(heights: Sequence[float], scale: Scale, style: Style) -> Areas:
    near, half, tip = (millimetres * scale.inches_per_mm for millimetres in (NEAR_MM, NOTCH_MM / 2, NOTCH_MM))
    points = [point for y in heights for point in ((-near, y - half), (-near, y + half), (-near - tip, y))]
    return Areas(np.array(points, dtype=float).reshape(-1, 2), np.full(len(heights), 3), style)


def wall_datum(datum: float, height: float, scale: Scale) -> Layer:
    """A tick through the pole at the datum, inches over the lowest base; nothing where that is beyond the wall."""
    mm = scale.inches_per_mm
    ends = [(-(FAR_MM + DATUM_MM) * mm, datum, -NEAR_MM * mm, datum)] if 0 <= datum <= height else []
    return Layer("datum", (segments(ends, "tick"),))


def wall_words(layouts: Sequence[Layout], places: Places, scale: Scale, unit: str) -> Layer:
    """Under each panel its mark, and what sets it apart: released from the wall, an origin or a base of its own."""
    found = zip(layouts, places, strict=True)
    return Layer("words", tuple(mark for layout, place in found for mark in _under(layout.panel, place, scale, unit)))


def standing(panel: Panel, unit: str) -> tuple[str, ...]:
    """What sets a panel apart in its wall; nothing for one on the level that takes its courses from the wall."""
    stands = "released" if panel.released else "" if is_continuous(panel) else "own origin"
    base = f"base {lettered(panel.base.inches, unit)}" if panel.base.nm else ""
    return tuple(filter(None, (stands, base)))


def _under(panel: Panel, place: tuple[float, float], scale: Scale, unit: str) -> Iterator[Mark]:
    mm, room = scale.inches_per_mm, panel.width / scale.inches_per_mm - BETWEEN_MM
    x, y = place[0] + panel.width / 2, place[1] - UNDER_MM * mm
    yield Text(x, y, fitting(panel.mark, room, NORMAL), "text strong", NORMAL)
    for line, words in enumerate(standing(panel, unit), 1):
        yield Text(x, y - line * LINE_MM * mm, fitting(words, room, SMALL), "text", SMALL)


def wall_tape(layouts: Sequence[Layout], places: Places, width: float, scale: Scale, unit: str) -> Layer:
    """Running dimensions of the panels' edges from the first panel's left; figures that would run together left out."""
    edges = [x for layout, (left, _) in zip(layouts, places, strict=True) for x in (left, left + layout.panel.width)]
    return Layer("tape", tuple(_tape(edges, width, scale, unit)) if edges else ())


def _tape(edges: Sequence[float], width: float, scale: Scale, unit: str) -> Iterator[Mark]:
    mm = scale.inches_per_mm
    near, far = -TAPE_NEAR_MM * mm, -TAPE_FAR_MM * mm
    yield box(0, far, width, near - far, "tape")
    yield segments([(x, near, x, far) for x in edges], "tick")
    free = -width
    for x in (*edges[::2], *edges[-1:]):
        words = lettered(x, unit)
        half = text_width_mm(words, SMALL) * mm / 2
        if x - half > free:
            yield Text(x, -FIGURES_MM * mm, words, "text", SMALL)
            free = x + half + mm
