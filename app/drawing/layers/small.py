"""Small pieces: heavy plum outline, a triangle each, and the size written here and there."""

from collections.abc import Iterator

import numpy as np
import shapely

from app.brickwork.pieces import bounds
from app.drawing.declutter import sparse
from app.drawing.lettering import lettered
from app.drawing.marks import SMALL, Anchor, Areas, Floats, Mark, Text
from app.drawing.scene import Scene

FRAME = "face"

SIDE_MM = 1.3
"""Side of the triangle, mm."""

REACH_MM = 2.2
"""From a small piece's middle to its size, mm."""

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
    reach = scene.mm(REACH_MM)
    for k in shown:
        dx, dy, anchor = _free_side(scene, float(x[k]), float(y[k]), reach)
        yield Text(float(x[k]) + dx, float(y[k]) + dy, lengths[k], "text small", SMALL, anchor)


def _free_side(scene: Scene, x: float, y: float, reach: float) -> tuple[float, float, Anchor]:
    sides: tuple[tuple[float, float, Anchor], ...] = (
        (-reach, 0.0, "end"),
        (reach, 0.0, "start"),
        (0.0, reach, "middle"),
        (0.0, -reach, "middle"),
    )
    for dx, dy, anchor in sides:
        far_x, far_y = x + 4 * dx, y + 2 * dy
        is_on_panel = 0 < far_x < scene.width and 0 < far_y < scene.height
        if is_on_panel and not shapely.contains_xy(scene.layout.field, far_x, far_y):
            return dx, dy, anchor
    return sides[2]


def triangles(x: Floats, y: Floats, side: float) -> Areas:
    """Marks of small pieces, one a point, sides in inches."""
    corners = np.array([[-side / 2, -side / 3], [side / 2, -side / 3], [0, side * 2 / 3]])
    points = np.column_stack([x, y])[:, None, :] + corners
    return Areas(points.reshape(-1, 2), np.full(len(x), 3), "small mark")
