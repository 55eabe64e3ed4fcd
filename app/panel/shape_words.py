"""A shape in a few words, for the list of changes."""

from app.panel.shapes import Arch, Circle, Polygon, Rect, Shape
from app.panel.values import Band
from app.panel.wording import said, said_point, said_size


def said_shape(shape: Shape | Band, unit: str) -> str:
    """Size and place of a shape: `4'-0" x 5'-4" at 5'-0", 8'-0"`."""
    match shape:
        case Band(course=course, courses=1):
            return f"course {course}"
        case Band(course=course, courses=courses):
            return f"courses {course} to {course + courses - 1}"
        case Polygon(points=points):
            return f"{len(points)} points"
        case Circle(radius=radius):
            return f"radius {said(radius, unit)} at {said_point((shape.x, shape.y), unit)}"
        case Rect(width=width, height=height):
            return f"{said_size(width, height, unit)} at {said_point((shape.x, shape.y), unit)}"
        case Arch(width=width, height=height, rise=rise):
            size = f"{said_size(width, height, unit)}, rise {said(rise, unit)},"
            return f"{size} at {said_point((shape.x, shape.y), unit)}"
