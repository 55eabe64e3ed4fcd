"""A shape with one side or corner dragged, the opposite one held."""

from app.lengths import Length
from app.panel.moving import less, moved, moved_point
from app.panel.shapes import Arch, Circle, Point, Polygon, Rect, Shape

SIDES = ("left", "right", "top", "bottom", "top left", "top right", "bottom left", "bottom right")
NONE = Length(0)


def reshaped(shape: Shape, side: str, dx: Length, dy: Length) -> Shape:
    """The shape after `side` (one of `SIDES`) is dragged `dx` to the right and `dy` up; a side heeds only one of them.

    A circle keeps its centre; an arch keeps its rise as far as its width allows; of a polygon, the points on that side
    of its bounding box move. Sizes of 0 or less come out as they are: the check refuses them.
    """
    sides = side.split()
    across = dx if "left" in sides or "right" in sides else NONE
    up = dy if "top" in sides or "bottom" in sides else NONE
    match shape:
        case Polygon(points=points):
            return Polygon(tuple(_dragged(point, points, sides, across, up) for point in points))
        case Circle():
            return Circle(shape.x, shape.y, moved(shape.radius, _outward(sides, across, up)))
        case Rect():
            return _box(shape, sides, across, up)
        case Arch(rise=rise):
            box = _box(Rect(shape.x, shape.y, shape.width, shape.height), sides, across, up)
            most = box.width.nm // 2
            return Arch(box.x, box.y, box.width, box.height, rise if rise.nm <= most else Length(most))


def _box(rect: Rect, sides: list[str], dx: Length, dy: Length) -> Rect:
    x, width = (moved(rect.x, dx), less(rect.width, dx)) if "left" in sides else (rect.x, moved(rect.width, dx))
    y, height = (moved(rect.y, dy), less(rect.height, dy)) if "bottom" in sides else (rect.y, moved(rect.height, dy))
    return Rect(x, y, width, height)


def _outward(sides: list[str], dx: Length, dy: Length) -> Length:
    across = less(NONE, dx) if "left" in sides else dx
    up = less(NONE, dy) if "bottom" in sides else dy
    return max(across, up, key=lambda length: abs(length.nm))


def _dragged(point: Point, points: tuple[Point, ...], sides: list[str], dx: Length, dy: Length) -> Point:
    across, up = [x.nm for x, _ in points], [y.nm for _, y in points]
    ends = {"left": min(across), "right": max(across), "bottom": min(up), "top": max(up)}
    is_across = any(point[0].nm == ends[side] for side in sides if side in ("left", "right"))
    is_up = any(point[1].nm == ends[side] for side in sides if side in ("top", "bottom"))
    return moved_point(point, dx if is_across else NONE, dy if is_up else NONE)
