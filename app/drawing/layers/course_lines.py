"""The numbered courses alone, for faces so small that bricks would run together."""

from collections.abc import Iterator

import shapely

from app.drawing.layers.pole import numbered_every
from app.drawing.marks import Mark, segments
from app.drawing.scene import Scene

FRAME = "face"


def marks(scene: Scene) -> Iterator[Mark]:
    """A line across the brick at the foot of every numbered course; none for an empty field."""
    field, every = scene.layout.field, numbered_every(scene)
    feet = [course.bottom for course in scene.layout.courses if course.course % every == 0]
    ends: list[tuple[float, float, float, float]] = []
    for y in feet:
        left, right = field.bounds[0], field.bounds[2]
        parts = shapely.get_parts(shapely.LineString([(left, y), (right, y)]).intersection(field))
        bounds = [part.bounds for part in parts if part.length > 0]
        ends += [(x0, y, x1, y) for x0, _, x1, _ in bounds]
    yield segments(ends, "rule")
