"""Small pieces: heavy plum outline, a triangle each, and the size written here and there."""

from collections.abc import Iterator

import numpy as np
import shapely
from numpy.typing import NDArray

from app.brickwork.pieces import bounds
from app.drawing.declutter import sparse
from app.drawing.lettering import lettered, text_width_mm
from app.drawing.marks import SMALL, Anchor, Areas, Floats, Mark, Text, box
from app.drawing.scene import Scene

FRAME = "face"

SIDE_MM = 1.3
"""Side of the triangle, mm."""

REACH_MM = 2.2
"""From a small piece's middle to its size, mm."""

SIDES: tuple[tuple[float, float, Anchor], ...] = ((-1, 0, "end"), (1, 0, "start"), (0, 1, "middle"), (0, -1, "middle"))
"""Left, right, above, below."""

WIDE_MM, HALF_MM = 10.0, 1.4
"""How far a size reaches from its piece, and half its height with air, mm."""

CLEAR_MM, AGAIN_MM = 6.0, 30.0
"""Sizes stand this far apart; an equal one is written again after this distance, mm."""


def marks(scene: Scene) -> Iterator[Mark]:
    """Outlines, triangles, sizes of the pieces shorter than the least piece; none where there is none."""
    trims = scene.layout.trims
    pieces = trims.pieces.take(trims.is_small)
    if not len(pieces.unit):
        return
    x0, y0, x1, y1 = bounds(pieces)
    x, y = (x0 + x1) / 2, (y0 + y1) / 2
    yield Areas(pieces.points, pieces.count, "small")
    yield triangles(x, y, scene.mm(SIDE_MM))
    yield from _sizes(scene, x, y)


def _sizes(scene: Scene, x: Floats, y: Floats) -> Iterator[Mark]:
    """First where there is no brick beside the piece, in an opening or past a slope; else on a label above it."""
    trims = scene.layout.trims
    lengths = [lettered(length, scene.unit) for length in trims.length[trims.is_small].tolist()]
    free = _free_sides(scene, x, y)
    order = np.argsort(~free.any(axis=1), kind="stable").tolist()
    kinds = [lengths[k] for k in order]
    for n in sparse(x[order].tolist(), y[order].tolist(), kinds, scene.mm(CLEAR_MM), scene.mm(AGAIN_MM)):
        k = order[n]
        side = int(np.argmax(free[k])) if free[k].any() else None
        yield from _size(scene, float(x[k]), float(y[k]), lengths[k], side)


def _size(scene: Scene, x: float, y: float, words: str, side: int | None) -> Iterator[Mark]:
    reach = scene.mm(REACH_MM)
    if side is not None:
        dx, dy, anchor = SIDES[side]
        yield Text(x + dx * reach, y + dy * reach, words, "text small", SMALL, anchor)
        return
    wide, high = scene.mm(text_width_mm(words, SMALL)), scene.mm(1.2 * SMALL)
    yield box(x - wide / 2, y + reach - high / 2, wide, high, "label")
    yield Text(x, y + reach, words, "text small")


def _free_sides(scene: Scene, x: Floats, y: Floats) -> NDArray[np.bool_]:
    """Whether a size fits at each side of each piece: no brick there, and within the panel's extent, so that it does
    not run among pole, tape or words. Shape (pieces, sides)."""
    free = np.ones((len(x), len(SIDES)), dtype=np.bool_)
    for side, (dx, dy, _) in enumerate(SIDES):
        for across, rise in ((1.0, -HALF_MM), (1.0, HALF_MM), (WIDE_MM, -HALF_MM), (WIDE_MM, HALF_MM)):
            at_x = x + scene.mm(dx * across if dx else across - WIDE_MM / 2)
            at_y = y + scene.mm(dy * REACH_MM + rise)
            is_beside = (at_x > 0) & (at_x < scene.width) & (at_y > 0) & (at_y < scene.height)
            free[:, side] &= is_beside & ~shapely.contains_xy(scene.layout.field, at_x, at_y)
    return free


def triangles(x: Floats, y: Floats, side: float) -> Areas:
    """Marks of small pieces, one a point, sides in inches."""
    corners = np.array([[-side / 2, -side / 3], [side / 2, -side / 3], [0, side * 2 / 3]])
    points = np.column_stack([x, y])[:, None, :] + corners
    return Areas(points.reshape(-1, 2), np.full(len(x), 3), "small mark")
