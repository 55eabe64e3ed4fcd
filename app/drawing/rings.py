"""Polygons as marks."""

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from app.drawing.marks import Areas
from app.drawing.styles import Style


def areas_of(shape: BaseGeometry, style: Style) -> Areas:
    """All rings of a polygon or of many, holes included (even-odd); no rings for an empty shape."""
    found = [shapely.get_coordinates(ring)[:-1] for ring in shapely.get_rings(shapely.get_parts(shape))]
    points = np.concatenate(found) if found else np.zeros((0, 2))
    return Areas(points, np.array([len(ring) for ring in found], dtype=np.int64), style)
