"""The words under a drawing: title, which face, scale with its bar, and what hatches and marks mean."""

from collections.abc import Iterator

import numpy as np

from app.drawing.layers.pole import FAR_MM
from app.drawing.layers.small import SIDE_MM, triangles
from app.drawing.lettering import with_fractions
from app.drawing.marks import LARGE, NORMAL, SMALL, Mark, Text, box
from app.drawing.scene import Scene
from app.drawing.styles import CUT_LETTERS, CUT_STYLES

FRAME = "view"

TITLE_MM = 38.0
"""From the panel's foot down to the title, past the tape's dimensions, mm."""

WORDS_MM, SCALE_MM, KEY_MM = 6.5, 14.5, 21.0
"""From the title down to each line of lettering under it, mm."""

BAR_FROM_MM, BAR_MM, BAR_STEPS = 34.0, 52.0, 4
FEET, METRES = (0.25, 0.5, 1, 2, 5, 10, 20), (0.05, 0.1, 0.2, 0.5, 1, 2, 5)

KEY_STEP_MM = 19.0


def marks(scene: Scene) -> Iterator[Mark]:
    """Four lines of words from the drawing's left edge."""
    yield from heading(scene, TITLE_MM)
    yield from _key(scene)


def heading(scene: Scene, below: float) -> Iterator[Mark]:
    """Title, words and scale, the title `below` mm under the panel's foot."""
    left = -scene.mm(FAR_MM)
    yield Text(left, -scene.mm(below), scene.title, "text strong", LARGE, "start")
    yield Text(left, -scene.mm(below + WORDS_MM), scene.words, "text strong", NORMAL, "start")
    y = -scene.mm(below + SCALE_MM)
    yield Text(left, y, f"Scale {with_fractions(scene.scale.words)}", "text", SMALL, "start")
    start, high = left + scene.mm(BAR_FROM_MM), scene.mm(1.2)
    count, inches, unit = bar_step(scene)
    for k in range(BAR_STEPS):
        yield box(start + k * inches, y - high / 2, inches, high, "solid" if k % 2 == 0 else "pole")
    for k in (0, BAR_STEPS // 2, BAR_STEPS):
        words = f"{k * count:g} {unit}" if k == BAR_STEPS else f"{k * count:g}"
        yield Text(start + k * inches, y + scene.mm(2.4), words, "text quiet", SMALL)


def bar_step(scene: Scene) -> tuple[float, float, str]:
    """One step of the scale bar: how many feet or metres, how many inches, and the unit's name."""
    unit, inches, counts = ("m", 1000 / 25.4, METRES) if scene.unit == "mm" else ("ft", 12.0, FEET)
    fitting = [count for count in counts if BAR_STEPS * count * inches <= scene.mm(BAR_MM)]
    count = fitting[-1] if fitting else counts[0]
    return count, count * inches, unit


def _key(scene: Scene) -> Iterator[Mark]:
    y, x, wide, high = -scene.mm(TITLE_MM + KEY_MM), -scene.mm(FAR_MM), scene.mm(5), scene.mm(2.8)
    for name, letter in CUT_LETTERS.items():
        yield box(x, y - high / 2, wide, high, CUT_STYLES[name])
        yield Text(x + scene.mm(6), y, f"{letter} {name}", "text", SMALL, "start")
        x += scene.mm(KEY_STEP_MM)
    yield box(x, y - high / 2, wide, high, "small")
    yield triangles(np.array([x + wide / 2]), np.array([y]), scene.mm(SIDE_MM))
    yield Text(x + scene.mm(6), y, "small", "text", SMALL, "start")
