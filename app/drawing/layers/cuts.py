"""Trimmed bricks: pale, hatched by cut class; the short leg of a corner unit is no cut and is drawn whole."""

from collections.abc import Iterator

from app.brickwork.cuts import CUTS
from app.brickwork.returns import is_uncut_corner
from app.drawing.marks import Areas, Mark
from app.drawing.scene import Scene
from app.drawing.styles import CUT_STYLES

FRAME = "face"


def marks(scene: Scene) -> Iterator[Mark]:
    """One mark a cut class; none where nothing is trimmed."""
    trims, is_corner = scene.layout.trims, is_uncut_corner(scene.layout)
    if is_corner.any():
        pieces = trims.pieces.take(is_corner)
        yield Areas(pieces.points, pieces.count, "whole")
    for number, name in enumerate(CUTS):
        chosen = (trims.cut == number) & ~is_corner
        if chosen.any():
            pieces = trims.pieces.take(chosen)
            yield Areas(pieces.points, pieces.count, CUT_STYLES[name])
