"""What the marks of the work at the sheets mean."""

from collections.abc import Iterator

from app.drawing.layers.key import HIGH_MM, WIDE_MM
from app.drawing.layers.pole import FAR_MM
from app.drawing.layers.title import KEY_MM, TITLE_MM
from app.drawing.lettering import lettered, text_width_mm
from app.drawing.marks import SMALL, Mark, Text, box, segments
from app.drawing.scene import Scene
from app.drawing.styles import Style

FRAME = "view"

DOWN_MM = 5.0
"""From the line of the sheets' key down to this one, mm."""


def marks(scene: Scene) -> Iterator[Mark]:
    """One line under the key of the sheets; none where nobody worked it out."""
    if scene.work is None:
        return
    y, x = -scene.mm(TITLE_MM + KEY_MM + DOWN_MM), -scene.mm(FAR_MM)
    wide, high = scene.mm(WIDE_MM), scene.mm(HIGH_MM)
    yield box(x, y - high / 2, wide, high, "lap")
    words = "lap, on the sheet on top"
    yield from _said(scene, x, y, words)
    x += _step(scene, words)
    edge = f"edge piece, {lettered(scene.work.edge_pieces.length, scene.unit)}"
    lines: list[tuple[Style, str]] = [("knife", "cut"), ("edge piece", edge)]
    for style, words in lines if scene.work.edge_pieces.runs else lines[:1]:
        yield segments([(x, y, x + wide, y)], style)
        yield from _said(scene, x, y, words)
        x += _step(scene, words)
    yield from _said(scene, x - wide, y, "A, B …: the stack of sheets in which it is cut")


def _said(scene: Scene, x: float, y: float, words: str) -> Iterator[Mark]:
    yield Text(x + scene.mm(WIDE_MM + 1), y, words, "text", SMALL, "start")


def _step(scene: Scene, words: str) -> float:
    return scene.mm(WIDE_MM + 5 + text_width_mm(words, SMALL))
