"""The words under a drawing: title, which face, and the scale with its bar."""

from collections.abc import Iterator

from app.drawing.layers.pole import FAR_MM
from app.drawing.lettering import with_fractions
from app.drawing.marks import LARGE, NORMAL, SMALL, Mark, Text, box
from app.drawing.scene import Scene

FRAME = "view"

TITLE_MM = 38.0
"""From the panel's foot down to the title, past the tape's dimensions, mm."""

WORDS_MM, SCALE_MM, KEY_MM = 6.5, 14.5, 21.0
"""From the title down to the words, the scale and a key under it, mm."""

BAR_FROM_MM, BAR_MM, BAR_STEPS = 34.0, 52.0, 4
FEET, METRES = (0.25, 0.5, 1, 2, 5, 10, 20), (0.05, 0.1, 0.2, 0.5, 1, 2, 5)


def marks(scene: Scene) -> Iterator[Mark]:
    """Three lines of words from the drawing's left edge."""
    yield from heading(scene, TITLE_MM)


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
