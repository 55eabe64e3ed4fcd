"""Trimmed bricks: pale with a clay outline, hatched by cut class."""

from collections.abc import Iterator

from app.brickwork.cuts import CUTS
from app.drawing.marks import Areas, Mark
from app.drawing.scene import Scene
from app.drawing.styles import CUT_STYLES

FRAME = "face"


def marks(scene: Scene) -> Iterator[Mark]:
    """One mark a cut class; none where nothing is trimmed."""
    trims = scene.layout.trims
    for number, name in enumerate(CUTS):
        chosen = trims.cut == number
        if chosen.any():
            pieces = trims.pieces.take(chosen)
            yield Areas(pieces.points, pieces.count, CUT_STYLES[name])
