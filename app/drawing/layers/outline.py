"""The panel's edge, drawn as what is cut."""

from collections.abc import Iterator

import shapely

from app.drawing.marks import Mark
from app.drawing.rings import areas_of
from app.drawing.scene import Scene
from app.panel.geometry import openings_polygon, outline_polygon

FRAME = "face"


def marks(scene: Scene) -> Iterator[Mark]:
    """A closed line round every part that the openings leave, so that a door breaks the lower edge."""
    panel = scene.layout.panel
    parts = shapely.get_parts(outline_polygon(panel).difference(openings_polygon(panel)))
    yield areas_of(shapely.MultiPolygon([shapely.Polygon(part.exterior) for part in parts]), "outline")
