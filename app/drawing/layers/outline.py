"""The panel's edge, drawn as what is cut, and the rims of its openings."""

from collections.abc import Iterator

from app.drawing.marks import Mark
from app.drawing.rings import areas_of
from app.drawing.scene import Scene
from app.panel.rings import opening_rings, rims

FRAME = "face"


def marks(scene: Scene) -> Iterator[Mark]:
    """Rims of the openings where there are any, then a closed line round what they leave."""
    panel = scene.layout.panel
    if panel.openings:
        yield areas_of(opening_rings(panel), "opening rim")
    yield areas_of(rims(panel), "outline")
