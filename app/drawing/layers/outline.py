"""The panel's edge, drawn as what is cut."""

from collections.abc import Iterator

import shapely

from app.drawing.marks import Mark
from app.drawing.rings import areas_of
from app.drawing.scene import Scene
from app.panel.geometry import openings_polygon, outline_polygon

FRAME = "face"


def marks(scene: Scene) -> Iterator[Mark]:
    """Rims of the openings, then a closed line round what they leave, so that a door breaks the lower edge."""
    panel = scene.layout.panel
    outline, taken = outline_polygon(panel), openings_polygon(panel)
    if not taken.is_empty:
        yield areas_of(taken, "opening rim")
    parts = shapely.get_parts(outline.difference(taken))
    yield areas_of(shapely.MultiPolygon([shapely.Polygon(part.exterior) for part in parts]), "outline")
