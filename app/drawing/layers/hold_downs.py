"""Bricks that are placed first to hold loose sheets down: a dot on each."""

from collections.abc import Iterator

import numpy as np

from app.drawing.marks import Boxes, Mark
from app.drawing.scene import Scene

FRAME = "face"

SIDE_MM = 1.1


def marks(scene: Scene) -> Iterator[Mark]:
    """All dots as one mark; none where nobody worked them out."""
    points = np.array([point for hold in (scene.work.hold_downs if scene.work else ()) for point in hold.points])
    if len(points):
        side = scene.mm(SIDE_MM)
        sides = np.full(len(points), side)
        yield Boxes(points[:, 0] - side / 2, points[:, 1] - side / 2, sides, sides, "solid")
