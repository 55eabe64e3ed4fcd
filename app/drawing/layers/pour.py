"""The pour: numbered bands, an arrow into each from one before it, vibrator points as crosses, the first drop."""

from collections.abc import Iterator

import numpy as np

from app.drawing.layers.lanes import labelled
from app.drawing.lettering import text_width_mm
from app.drawing.marks import SMALL, Floats, Lines, Mark, Text, box, line, segments
from app.drawing.rings import areas_of
from app.drawing.scene import Scene
from app.site.pour_values import Corner, FirstDrop

FRAME = "face"

CROSS_MM = 0.7
"""Half of a cross, mm."""

BEHIND_MM, AHEAD_MM, HEAD_MM = 2.5, 4.5, 1.8
"""How far an arrow reaches to either side of the edge that it crosses, and the sides of its head, mm."""

FIRST_DROP = "first drop"


def marks(scene: Scene) -> Iterator[Mark]:
    """Bands, crosses, arrows and numbers, from the lowest up; none where nobody worked the pour out."""
    pour = scene.pour
    if pour is None or not pour.bands:
        return
    yield areas_of([np.array(ring) for band in pour.bands for ring in band.rings], "pour edge")
    yield crosses(pour.points, scene.mm(CROSS_MM))
    for drop in pour.drops:
        yield box(drop.strip.x, drop.strip.y, drop.strip.width, drop.strip.height, "first drop")
    for band in pour.bands:
        if band.after is not None:
            yield from _arrow(scene, band.begins, band.heading)
    for band in pour.bands:
        yield from labelled(scene, band.at, str(band.number))
    for drop in pour.drops:
        yield from _named(scene, drop)


def crosses(points: Floats, half: float) -> Lines:
    """Upright crosses, arms of `half` inches; none for no points."""
    arms = np.array([[-1, 0], [1, 0], [0, -1], [0, 1]]) * half
    ends = points[:, None, :] + arms
    return Lines(ends.reshape(-1, 2), np.full(2 * len(points), 2), "vibrator")


def _arrow(scene: Scene, begins: Corner, heading: Corner) -> Iterator[Mark]:
    """Over the edge at which the stream begins, into the band."""
    dx, dy = heading
    behind, ahead, head = (scene.mm(mm) for mm in (BEHIND_MM, AHEAD_MM, HEAD_MM))
    tip = begins[0] + dx * ahead, begins[1] + dy * ahead
    yield segments([(begins[0] - dx * behind, begins[1] - dy * behind, *tip)], "pour way")
    back, side = (tip[0] - dx * head, tip[1] - dy * head), head / 2
    yield line(
        [(back[0] - dy * side, back[1] + dx * side), tip, (back[0] + dy * side, back[1] - dx * side)], "pour way"
    )


def _named(scene: Scene, drop: FirstDrop) -> Iterator[Mark]:
    """Over the square where there is room above it, else under it, within the panel's sides."""
    half = scene.mm(text_width_mm(FIRST_DROP, SMALL)) / 2
    strip, high = drop.strip, scene.mm(SMALL)
    x = min(max(strip.x + strip.width / 2, half), max(half, scene.width - half))
    above = strip.y + strip.height + high
    y = above if above + high < scene.height else strip.y - high
    yield box(x - half, y - 0.7 * high, 2 * half, 1.4 * high, "label")
    yield Text(x, y, FIRST_DROP, "text strong", SMALL)
