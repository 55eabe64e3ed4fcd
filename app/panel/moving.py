"""Lengths, points and shapes moved across and up; what does not move keeps the text it was typed with."""

from app.lengths import Length
from app.panel.shapes import Arch, Circle, Point, Polygon, Rect, Shape


def moved(length: Length, by: Length) -> Length:
    """The length and `by` together, exact."""
    return Length(length.nm + by.nm) if by.nm else length


def less(length: Length, by: Length) -> Length:
    """The length without `by`, exact; below 0 where there is not enough."""
    return Length(length.nm - by.nm) if by.nm else length


def moved_point(point: Point, dx: Length, dy: Length) -> Point:
    """The point moved by `dx` to the right and `dy` up."""
    return moved(point[0], dx), moved(point[1], dy)


def moved_points(points: tuple[Point, ...], dx: Length, dy: Length) -> tuple[Point, ...]:
    """The points moved by `dx` to the right and `dy` up."""
    return tuple(moved_point(point, dx, dy) for point in points)


def moved_shape(shape: Shape, dx: Length, dy: Length) -> Shape:
    """The shape moved by `dx` to the right and `dy` up, its sizes as typed."""
    match shape:
        case Polygon(points=points):
            return Polygon(moved_points(points, dx, dy))
        case Rect():
            return moved_rect(shape, dx, dy)
        case Circle(radius=radius):
            return Circle(moved(shape.x, dx), moved(shape.y, dy), radius)
        case Arch(width=width, height=height, rise=rise):
            return Arch(moved(shape.x, dx), moved(shape.y, dy), width, height, rise)


def moved_region(region: Rect | Polygon, dx: Length, dy: Length) -> Rect | Polygon:
    """The rectangle or polygon moved by `dx` to the right and `dy` up."""
    return moved_rect(region, dx, dy) if isinstance(region, Rect) else Polygon(moved_points(region.points, dx, dy))


def moved_rect(rect: Rect, dx: Length, dy: Length) -> Rect:
    """The rectangle moved by `dx` to the right and `dy` up."""
    return Rect(moved(rect.x, dx), moved(rect.y, dy), rect.width, rect.height)
