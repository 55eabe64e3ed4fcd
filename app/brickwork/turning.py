"""Turning points and shapes about the face frame's origin, for bonds that are turned."""

from math import cos, radians, sin

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from app.brickwork.lattice import Floats
from app.brickwork.pieces import Pieces


def turned_points(points: Floats, degrees: float) -> Floats:
    """Points turned anticlockwise about the face frame's origin."""
    if degrees == 0:
        return points
    c, s = cos(radians(degrees)), sin(radians(degrees))
    return np.column_stack([c * points[:, 0] - s * points[:, 1], s * points[:, 0] + c * points[:, 1]])


def turned(shape: BaseGeometry, degrees: float) -> BaseGeometry:
    """A shape turned anticlockwise about the face frame's origin."""
    return shape if degrees == 0 else shapely.transform(shape, lambda points: turned_points(points, degrees))


def turned_pieces(pieces: Pieces, degrees: float) -> Pieces:
    """Pieces turned anticlockwise about the face frame's origin."""
    return pieces if degrees == 0 else Pieces(pieces.unit, pieces.count, turned_points(pieces.points, degrees))
