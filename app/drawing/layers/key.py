"""What the hatchings and marks of cut bricks mean."""

from collections.abc import Iterator

import numpy as np

from app.drawing.layers.pole import FAR_MM
from app.drawing.layers.small import SIDE_MM, triangles
from app.drawing.layers.title import KEY_MM, TITLE_MM
from app.drawing.marks import SMALL, Mark, Text, box
from app.drawing.scene import Scene
from app.drawing.styles import CUT_LETTERS, CUT_STYLES

FRAME = "view"

STEP_MM, WIDE_MM, HIGH_MM = 19.0, 5.0, 2.8


def marks(scene: Scene) -> Iterator[Mark]:
    """One line under the title: four cut classes and the small piece."""
    y, x = -scene.mm(TITLE_MM + KEY_MM), -scene.mm(FAR_MM)
    wide, high = scene.mm(WIDE_MM), scene.mm(HIGH_MM)
    for name, letter in CUT_LETTERS.items():
        yield box(x, y - high / 2, wide, high, CUT_STYLES[name])
        yield Text(x + scene.mm(WIDE_MM + 1), y, f"{letter} {name}", "text", SMALL, "start")
        x += scene.mm(STEP_MM)
    yield box(x, y - high / 2, wide, high, "small")
    yield triangles(np.array([x + wide / 2]), np.array([y]), scene.mm(SIDE_MM))
    yield Text(x + scene.mm(WIDE_MM + 1), y, "small", "text", SMALL, "start")
