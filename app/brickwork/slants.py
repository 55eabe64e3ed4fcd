"""Units with one slanted cut right through them: a corner or side sliced off along a line, by arithmetic."""

import numpy as np

from app.brickwork.boundary import Edges
from app.brickwork.lattice import Floats, Grid, Ints
from app.panel.tolerance import TOLERANCE


def sliced(grid: Grid, edge: Edges, which: Ints, unit: Ints) -> tuple[Ints, Ints, Floats]:
    """Owner, number of points and points (ring after ring, inches) of what is left of each unit left of its edge."""
    box = (grid.x0[unit], grid.y0[unit], grid.x1[unit], grid.y1[unit])
    corners = np.stack([box[0], box[1], box[2], box[1], box[2], box[3], box[0], box[3]], axis=-1).reshape(-1, 4, 2)
    beside = _distance(edge, which, corners)
    side = np.where(np.abs(beside) <= TOLERANCE, 0, np.sign(beside))
    following, far_side = np.roll(corners, -1, axis=1), np.roll(side, -1, axis=1)
    crosses = side * far_side < 0
    share = beside / np.where(crosses, beside - np.roll(beside, -1, axis=1), 1.0)
    points = np.empty((len(unit), 8, 2))
    points[:, 0::2] = corners
    points[:, 1::2] = corners + share[:, :, None] * (following - corners)
    kept = np.empty((len(unit), 8), dtype=np.bool_)
    kept[:, 0::2] = side >= 0
    kept[:, 1::2] = crosses
    return unit, kept.sum(axis=1), points[kept]


def _distance(edge: Edges, which: Ints, points: Floats) -> Floats:
    """Distance of each unit's points from its edge's line, positive on the left."""
    x0, y0 = edge.x0[which, None], edge.y0[which, None]
    dx, dy = edge.x1[which, None] - x0, edge.y1[which, None] - y0
    across: Floats = dx * (points[:, :, 1] - y0) - dy * (points[:, :, 0] - x0)
    return across / np.hypot(dx, dy)
