"""Letters of cut bricks: L length, H height, N notch, S skew."""

from collections.abc import Iterator

import numpy as np

from app.brickwork.cuts import CUTS
from app.brickwork.pieces import bounds
from app.brickwork.returns import is_uncut_corner
from app.drawing.declutter import sparse
from app.drawing.marks import SMALL, Letters, Mark
from app.drawing.scene import Scene
from app.drawing.styles import CUT_LETTERS

FRAME = "face"

LETTER_ROOM_MM = 0.8 * SMALL
"""A letter goes into a piece at least this wide and high on paper: its capitals and a little air."""

CLEAR_MM, AGAIN_MM = 3.0, 14.0
"""Letters on pieces without room stand this far apart, and an equal one comes again after this distance, mm."""


def marks(scene: Scene) -> Iterator[Mark]:
    """In every piece with room; among those without, one of a cut class here and there, the rarest class first."""
    trims = scene.layout.trims
    x0, y0, x1, y1 = bounds(trims.pieces)
    x, y = (x0 + x1) / 2, (y0 + y1) / 2
    roomy = np.minimum(trims.length, trims.height) >= scene.mm(LETTER_ROOM_MM)
    lettered = ~trims.is_small & ~is_uncut_corner(scene.layout)
    tight = np.flatnonzero(~roomy & lettered)
    tight = tight[np.argsort(np.bincount(trims.cut, minlength=len(CUTS))[trims.cut[tight]], kind="stable")]
    kinds = trims.cut[tight].tolist()
    some = sparse(x[tight].tolist(), y[tight].tolist(), kinds, scene.mm(CLEAR_MM), scene.mm(AGAIN_MM))
    shown = np.concatenate([np.flatnonzero(roomy & lettered), tight[some]]).astype(np.int64)
    if len(shown):
        letters = "".join(CUT_LETTERS[CUTS[cut]] for cut in trims.cut[shown].tolist())
        yield Letters(x[shown], y[shown], letters, "cut letter")
