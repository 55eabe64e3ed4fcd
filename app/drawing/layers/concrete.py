"""The panel's ground: concrete, and the joints between the bricks."""

from collections.abc import Iterator

from app.drawing.marks import Mark, area
from app.drawing.rings import areas_of
from app.drawing.scene import Scene
from app.panel.rings import rings

FRAME = "face"


def marks(scene: Scene) -> Iterator[Mark]:
    """The outline filled, and the brick field over it where there is one."""
    yield area(list(scene.layout.panel.outline_inches), "concrete")
    if not scene.layout.field.is_empty:
        yield areas_of(rings(scene.layout.field), "joint")
