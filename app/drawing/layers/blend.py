"""Colours of a blend: every piece in the fill and hatching of its colour, with its letter where there is room."""

from collections.abc import Iterator

import numpy as np

from app.brickwork.blend import colours_of
from app.brickwork.layout import Layout, whole_outlines
from app.brickwork.pieces import Pieces
from app.drawing.marks import SMALL, Areas, Letters, Mark
from app.drawing.scene import Scene
from app.drawing.styles import BLEND_STYLES

FRAME = "face"

LETTER_ROOM_MM = 1.2 * SMALL
"""A letter goes into a whole brick at least this wide and high on paper."""

LETTERS = "ABCDEFGHIJKL"
"""One a colour, in the order of the blend: as many as a blend may have colours."""


HATCH_WORDS = ("plain", "slanted lines", "level lines", "upright lines", "crossed lines", "short strokes")
"""What each of `BLEND_STYLES` looks like, for a page that says it in words."""


def marks(scene: Scene) -> Iterator[Mark]:
    """One mark a colour, then the letters; none for brick of one colour. Styles come again after the sixth colour:
    then the letters tell."""
    layout, names = scene.layout, scene.blend.colours
    if len(names) < 2 or not len(layout.units):
        return
    colours, outlines = colours_of(layout, scene.blend), _outlines(layout)
    for colour in range(len(names)):
        chosen = outlines.take(colours[outlines.unit] == colour)
        if len(chosen.unit):
            yield Areas(chosen.points, chosen.count, BLEND_STYLES[colour % len(BLEND_STYLES)])
    units = layout.units
    roomy = ~units.is_trimmed & (np.minimum(units.width, units.height) >= scene.mm(LETTER_ROOM_MM))
    if roomy.any():
        letters = "".join(LETTERS[colour] for colour in colours[roomy].tolist())
        x, y = units.x + units.width / 2, units.y + units.height / 2
        yield Letters(x[roomy], y[roomy], letters, "blend letter")


def _outlines(layout: Layout) -> Pieces:
    """Every unit's outline, whole ones first."""
    trims, units = layout.trims, layout.units
    whole = [np.flatnonzero((units.zone == zone) & ~units.is_trimmed) for zone in range(len(layout.regions))]
    corners = [whole_outlines(layout, zone).reshape(-1, 2) for zone in range(len(layout.regions))]
    unit = np.concatenate([*whole, trims.unit])
    count = np.concatenate([np.full(sum(map(len, whole)), 4), trims.pieces.count])
    return Pieces(unit, count, np.concatenate([*corners, trims.pieces.points]))
