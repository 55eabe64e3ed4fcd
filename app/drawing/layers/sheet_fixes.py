"""Sheets to fix to the bed: a flag beside the number, W when it is windy, S when the temperature swings far.

On most panels every last sheet of a row has one, so that the layer is off unless it is asked for; lists say it too.
"""

from collections.abc import Iterator

from app.drawing.layers.sheet_numbers import labels
from app.drawing.marks import SMALL, Mark, Text, area
from app.drawing.scene import Scene

FRAME = "face"

HALF_MM = 1.9
"""Half the width of a flag, mm."""

LETTERS = {"wind": "W", "swing": "S"}


def marks(scene: Scene) -> Iterator[Mark]:
    """Diamonds at the right of a number (on the bed, left), two for a sheet that is fixed for both reasons."""
    if scene.plan is None or scene.work is None:
        return
    place = dict(zip((sheet.number for sheet in scene.plan.sheets), labels(scene), strict=True))
    taken: dict[int, int] = {}
    for fix in scene.work.fixes:
        before = taken.setdefault(fix.sheet, 0)
        taken[fix.sheet] += 1
        box = place[fix.sheet].box
        x = box[2] + scene.mm(HALF_MM * (1.3 + 2.2 * before))
        yield from flag(scene, x, (box[1] + box[3]) / 2, LETTERS[fix.when])


def flag(scene: Scene, x: float, y: float, letter: str) -> Iterator[Mark]:
    """A diamond with its letter."""
    half = scene.mm(HALF_MM)
    yield area([(x - half, y), (x, y - half), (x + half, y), (x, y + half)], "missed")
    yield Text(x, y, letter, "text strong", 0.8 * SMALL)
