"""Small pieces: heavy plum outline and a triangle each."""

from collections.abc import Iterator

import numpy as np

from app.brickwork.pieces import bounds
from app.drawing.marks import Areas, Floats, Mark
from app.drawing.scene import Scene

FRAME = "face"

SIDE_MM = 1.3
"""Side of the triangle, mm."""


def marks(scene: Scene) -> Iterator[Mark]:
    """Outlines and triangles of the pieces shorter than the least piece; none where there is none."""
    trims = scene.layout.trims
    pieces = trims.pieces.take(trims.is_small)
    if len(pieces.unit):
        x0, y0, x1, y1 = bounds(pieces)
        yield Areas(pieces.points, pieces.count, "small")
        yield triangles((x0 + x1) / 2, (y0 + y1) / 2, scene.mm(SIDE_MM))


def triangles(x: Floats, y: Floats, side: float) -> Areas:
    """Marks of small pieces, one a point, sides in inches."""
    corners = np.array([[-side / 2, -side / 3], [side / 2, -side / 3], [0, side * 2 / 3]])
    points = np.column_stack([x, y])[:, None, :] + corners
    return Areas(points.reshape(-1, 2), np.full(len(x), 3), "small mark")
