"""Trimmed bricks: pale with a clay outline, hatched by cut class, lettered where the letter fits."""

from collections.abc import Iterator

import numpy as np

from app.brickwork.cuts import CUTS
from app.brickwork.pieces import bounds
from app.drawing.marks import SMALL, Areas, Letters, Mark
from app.drawing.scene import Scene
from app.drawing.styles import CUT_LETTERS, CUT_STYLES

FRAME = "face"

LETTER_ROOM_MM = 0.8 * SMALL
"""A letter goes into a piece at least this wide and high on paper: its capitals and a little air."""


def marks(scene: Scene) -> Iterator[Mark]:
    """One mark a cut class, then the letters; none where nothing is trimmed."""
    trims = scene.layout.trims
    for number, name in enumerate(CUTS):
        chosen = trims.cut == number
        if chosen.any():
            pieces = trims.pieces.take(chosen)
            yield Areas(pieces.points, pieces.count, CUT_STYLES[name])
    yield from _letters(scene)


def _letters(scene: Scene) -> Iterator[Mark]:
    trims = scene.layout.trims
    x0, y0, x1, y1 = bounds(trims.pieces)
    room = scene.mm(LETTER_ROOM_MM)
    fits = (np.minimum(x1 - x0, y1 - y0) >= room) & ~trims.is_small
    if fits.any():
        letters = "".join(CUT_LETTERS[CUTS[cut]] for cut in trims.cut[fits].tolist())
        yield Letters((x0 + x1)[fits] / 2, (y0 + y1)[fits] / 2, letters, "cut letter")
