"""Where words stand on liner sheets."""

from collections.abc import Sequence

import numpy as np
import shapely
from numpy.typing import NDArray

from app.liner.values import Sheet

Floats = NDArray[np.float64]


def label_places(sheets: Sequence[Sheet]) -> Floats:
    """A point on each sheet's largest part, its middle where that is inside, inches, shape (sheets, 2)."""
    parts_of = [sheet.trim or (sheet.outline,) for sheet in sheets]
    found = [np.asarray(ring) for parts in parts_of for ring in parts]
    if not found:
        return np.zeros((0, 2))
    index = np.repeat(np.arange(len(found)), [len(ring) for ring in found])
    polygons = np.asarray(shapely.polygons(shapely.linearrings(np.concatenate(found), indices=index)))
    owner = np.repeat(np.arange(len(sheets)), [len(parts) for parts in parts_of])
    order = np.lexsort((shapely.area(polygons), owner))
    largest = polygons[order[np.append(np.diff(owner[order]) > 0, True)]]
    middles = shapely.centroid(largest)
    inside = shapely.contains(largest, middles)
    points: Floats = shapely.get_coordinates(np.where(inside, middles, shapely.point_on_surface(largest)))
    return points


def has_room(sheet: Sheet, left: float, low: float, right: float, high: float) -> bool:
    """Whether a box, inches, lies wholly on one part of the sheet's trim."""
    box = shapely.box(left, low, right, high)
    return any(shapely.Polygon(ring).contains(box) for ring in sheet.trim)
