"""The numbered courses alone, for faces so small that bricks would run together."""

from collections.abc import Iterator

from app.brickwork.spans import level_spans
from app.drawing.layers.pole import numbered_every
from app.drawing.marks import Mark, segments
from app.drawing.scene import Scene

FRAME = "face"


def marks(scene: Scene) -> Iterator[Mark]:
    """A line across the brick at the foot of every numbered course; none for an empty field."""
    every = numbered_every(scene)
    feet = [course.bottom for course in scene.layout.courses if course.course % every == 0]
    yield segments([(left, y, right, y) for y in feet for left, right in level_spans(scene.layout.field, y)], "rule")
