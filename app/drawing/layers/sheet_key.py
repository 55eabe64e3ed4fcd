"""What the grounds and lines of a sheet plan mean."""

from collections.abc import Iterator

from app.drawing.layers.key import HIGH_MM, WIDE_MM
from app.drawing.layers.pole import FAR_MM
from app.drawing.layers.title import KEY_MM, TITLE_MM
from app.drawing.lettering import lettered, text_width_mm
from app.drawing.marks import SMALL, Mark, Text, box, segments
from app.drawing.scene import Scene
from app.drawing.styles import Style

FRAME = "view"


def marks(scene: Scene) -> Iterator[Mark]:
    """One line under the title; none without a plan."""
    if scene.plan is None:
        return
    y, x = -scene.mm(TITLE_MM + KEY_MM), -scene.mm(FAR_MM)
    wide, high = scene.mm(WIDE_MM), scene.mm(HIGH_MM)
    trimmed = sum(sheet.is_trimmed for sheet in scene.plan.sheets)
    grounds: list[tuple[Style, str]] = [
        ("sheet full", f"{scene.plan.placed - trimmed} full"),
        ("sheet trimmed", f"{trimmed} trimmed, to the size given"),
    ]
    for style, words in grounds:
        yield box(x, y - high / 2, wide, high, style)
        yield box(x, y - high / 2, wide, high, "sheet")
        yield Text(x + scene.mm(WIDE_MM + 1), y, words, "text", SMALL, "start")
        x += scene.mm(WIDE_MM + 5 + text_width_mm(words, SMALL))
    yield segments([(x, y, x + 2 * wide, y)], "sheet")
    lap = lettered(scene.plan.lap, scene.unit)
    words = f"seam; lap {lap}; laid from {scene.plan.corner} in the order of the numbers"
    yield Text(x + scene.mm(2 * WIDE_MM + 1), y, words, "text", SMALL, "start")
