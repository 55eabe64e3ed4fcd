"""Rectangles of the face, and places for marks in its parts."""

from dataclasses import dataclass

from shapely.geometry.base import BaseGeometry


@dataclass(frozen=True, slots=True)
class Strip:
    """A rectangle of the face, lower-left corner and size, face frame, inches."""

    x: float
    y: float
    width: float
    height: float


def inner_point(shape: BaseGeometry) -> tuple[float, float]:
    """The middle of a shape where that is inside, else a point of it; the shape is not empty."""
    middle = shape.centroid if shape.contains(shape.centroid) else shape.point_on_surface()
    return middle.x, middle.y
