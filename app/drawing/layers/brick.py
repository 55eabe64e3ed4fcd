"""Whole bricks, one mark a region."""

from collections.abc import Iterator

import numpy as np

from app.brickwork.layout import whole_outlines
from app.drawing.marks import Areas, Boxes, Mark
from app.drawing.scene import Scene

FRAME = "face"


def marks(scene: Scene) -> Iterator[Mark]:
    """Rectangles for a level bond, polygons for a turned one; none for an empty field."""
    layout = scene.layout
    units = layout.units
    for zone, region in enumerate(layout.regions):
        chosen = (units.zone == zone) & ~units.is_trimmed
        if not chosen.any():
            continue
        if region.bond.turn == 0:
            yield Boxes(units.x[chosen], units.y[chosen], units.width[chosen], units.height[chosen], "whole")
        else:
            corners = whole_outlines(layout, zone)
            yield Areas(corners.reshape(-1, 2), np.full(len(corners), 4), "whole")
