"""Rectangles of the face, and places for marks in its parts."""

from dataclasses import dataclass

import shapely
from shapely.geometry.base import BaseGeometry

from app.panel.geometry import outline_polygon, shape_polygon
from app.panel.values import Panel


@dataclass(frozen=True, slots=True)
class Strip:
    """A rectangle of the face, lower-left corner and size, face frame, inches."""

    x: float
    y: float
    width: float
    height: float


def concrete(panel: Panel) -> BaseGeometry:
    """The panel less its openings, inches, face frame.

    The openings are taken as drawn: cut to the outline first, they would leave threads of no width along its slants.
    """
    return outline_polygon(panel).difference(shapely.union_all([shape_polygon(one.shape) for one in panel.openings]))


def inner_point(shape: BaseGeometry) -> tuple[float, float]:
    """The middle of a shape where that is inside, else a point of it; the shape is not empty."""
    middle = shape.centroid if shape.contains(shape.centroid) else shape.point_on_surface()
    return middle.x, middle.y
