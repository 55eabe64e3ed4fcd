"""Beside the number of each sheet that is cut the letter of its stack."""

from collections.abc import Iterator

from app.drawing.layers.sheet_numbers import labels
from app.drawing.marks import Mark
from app.drawing.scene import Scene

FRAME = "face"


def marks(scene: Scene) -> Iterator[Mark]:
    """One letter a sheet that is cut, after its number; none where nobody worked them out."""
    if scene.plan is not None and scene.work is not None:
        yield from (label.letter for label in labels(scene) if label.letter is not None)
