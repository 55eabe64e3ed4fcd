"""What the fills and letters of a blend mean."""

from collections.abc import Iterator

from app.drawing.layers.blend import LETTERS
from app.drawing.layers.key import HIGH_MM, WIDE_MM
from app.drawing.layers.pole import FAR_MM
from app.drawing.layers.title import KEY_MM, TITLE_MM
from app.drawing.lettering import text_width_mm
from app.drawing.marks import SMALL, Mark, Text, box
from app.drawing.scene import Scene
from app.drawing.styles import BLEND_STYLES

FRAME = "view"

LONGEST = 24
"""Letters of a colour's name that are written."""


def marks(scene: Scene) -> Iterator[Mark]:
    """One line under the title: box, letter, name and share of each colour; none for brick of one colour."""
    colours = scene.blend.colours
    if len(colours) < 2:
        return
    y, x = -scene.mm(TITLE_MM + KEY_MM), -scene.mm(FAR_MM)
    wide, high = scene.mm(WIDE_MM), scene.mm(HIGH_MM)
    for place, colour in enumerate(colours):
        yield box(x, y - high / 2, wide, high, BLEND_STYLES[place % len(BLEND_STYLES)])
        words = f"{LETTERS[place]} {colour.name[:LONGEST]}, {colour.percent:g} %"
        yield Text(x + scene.mm(WIDE_MM + 1), y, words, "text", SMALL, "start")
        x += scene.mm(WIDE_MM + 4 + text_width_mm(words, SMALL))
