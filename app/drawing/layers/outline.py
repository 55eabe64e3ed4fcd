"""The panel's edge, drawn as what is cut."""

from collections.abc import Iterator

from app.drawing.marks import Mark, area
from app.drawing.scene import Scene

FRAME = "face"


def marks(scene: Scene) -> Iterator[Mark]:
    """One closed line."""
    yield area(list(scene.layout.panel.outline_inches), "outline")
