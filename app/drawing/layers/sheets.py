"""Liner sheets: dashed seams, each drawn once."""

from collections.abc import Iterator

from app.drawing.marks import Mark
from app.drawing.scene import Scene
from app.drawing.seams import seams

FRAME = "face"


def marks(scene: Scene) -> Iterator[Mark]:
    """The edges of all sheets as they are trimmed, as one mark; none without a plan or sheets."""
    if scene.plan is not None and scene.plan.sheets:
        yield seams([ring for sheet in scene.plan.sheets for ring in (*sheet.trim, *sheet.holes)])
