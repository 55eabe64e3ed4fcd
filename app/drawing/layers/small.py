"""Small pieces: heavy plum outline, a triangle each, and the size written here and there."""

from collections.abc import Iterator

import numpy as np
import shapely

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
    """Beside the piece where there is no brick, in the opening or past a slope; else just above it."""
    trims = scene.layout.trims
    lengths = [lettered(length, scene.unit) for length in trims.length[trims.is_small].tolist()]
    shown = sparse(x.tolist(), y.tolist(), lengths, scene.mm(CLEAR_MM), scene.mm(AGAIN_MM))
    for k in shown:
        yield from _size(scene, float(x[k]), float(y[k]), lengths[k])


def _size(scene: Scene, x: float, y: float, words: str) -> Iterator[Mark]:
    reach, high = scene.mm(REACH_MM), scene.mm(1.2 * SMALL)
    for dx, dy, anchor in SIDES:
        if _is_free(scene, x + 4 * dx * reach, y + 2 * dy * reach):
            yield Text(x + dx * reach, y + dy * reach, words, "text small", SMALL, anchor)
            return
    wide = scene.mm(text_width_mm(words, SMALL))
    yield box(x - wide / 2, y + reach - high / 2, wide, high, "label")
    yield Text(x, y + reach, words, "text small")


def _is_free(scene: Scene, x: float, y: float) -> bool:
    """Whether there is no brick at a point that is still beside the panel's faces, not among pole, tape or words."""
    is_beside = 0 < x < scene.width and 0 < y < scene.height
    return is_beside and not shapely.contains_xy(scene.layout.field, x, y)


def triangles(x: Floats, y: Floats, side: float) -> Areas:
    """Marks of small pieces, one a point, sides in inches."""
    corners = np.array([[-side / 2, -side / 3], [side / 2, -side / 3], [0, side * 2 / 3]])
    points = np.column_stack([x, y])[:, None, :] + corners
    return Areas(points.reshape(-1, 2), np.full(len(x), 3), "small mark")
