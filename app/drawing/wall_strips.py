"""Pole and tape of a whole wall: its courses up the left, its panel edges along the foot."""

from collections.abc import Iterator, Sequence
from math import ceil

from app.brickwork.layout import Layout
from app.drawing.layers.pole import EVERY, LONG_TICK_MM, TICK_MM
from app.drawing.lettering import lettered, text_width_mm
from app.drawing.marks import SMALL, Layer, Mark, Text, box, segments
from app.drawing.scales import Scale

NEAR_MM, FAR_MM = 3.0, 14.0
"""The pole's two edges, mm left of the first panel."""

TAPE_NEAR_MM, TAPE_FAR_MM, FIGURES_MM = 12.0, 15.0, 18.0
"""The tape's two edges and the middle of its figures, mm below the lowest base: the panels' marks stand above it."""

Places = Sequence[tuple[float, float]]


def wall_pole(layouts: Sequence[Layout], places: Places, height: float, scale: Scale) -> Layer:
    """A tick a course of the first panel's coursing run up the whole wall; an empty layer for no brick."""
    return Layer(
        "pole", tuple(_pole(layouts[0], places[0][1], height, scale) if layouts and layouts[0].courses else ())
    )


def _pole(first: Layout, base: float, height: float, scale: Scale) -> Iterator[Mark]:
    mm, gauge = scale.inches_per_mm, first.size.gauge
    far, start = -FAR_MM * mm, base + first.origin[1]
    yield box(far, 0, (FAR_MM - NEAR_MM) * mm, height, "pole")
    every = next((every for every in EVERY if every * gauge >= 1.3 * SMALL * mm), EVERY[-1])
    numbers = range(ceil(-start / gauge), ceil((height - start) / gauge))
    feet = {k: start + k * gauge for k in numbers}
    reach = {k: (TICK_MM if k % every else LONG_TICK_MM) * mm for k in numbers}
    yield segments([(far, y, far + reach[k], y) for k, y in feet.items()], "rule")
    for k, y in feet.items():
        if k % every == 0 and 0.5 * SMALL * mm <= y <= height - 0.5 * SMALL * mm:
            yield Text(far + (LONG_TICK_MM + 0.5) * mm, y, str(k), "text", SMALL, "start")


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
