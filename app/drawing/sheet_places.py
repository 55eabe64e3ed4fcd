"""Where words stand on liner sheets."""

from collections.abc import Sequence

import numpy as np
import shapely

from app.drawing.marks import Floats
from app.liner.values import Sheet


def number_places(sheets: Sequence[Sheet]) -> Floats:
    """A point on each sheet's largest part, inches, shape (sheets, 2); empty for no sheets."""
    rings = [ring for sheet in sheets for ring in (sheet.trim or (sheet.outline,))]
    if not rings:
        return np.zeros((0, 2))
    owner = np.repeat(np.arange(len(sheets)), [len(sheet.trim or (sheet.outline,)) for sheet in sheets])
    parts = _polygons([np.asarray(ring) for ring in rings])
    largest = parts[_last_of_each(owner, shapely.area(parts))]
    middles = shapely.centroid(largest)
    inside = shapely.contains(largest, middles)
    points: Floats = shapely.get_coordinates(np.where(inside, middles, shapely.point_on_surface(largest)))
    return points


def _polygons(rings: list[Floats]) -> np.ndarray:
    index = np.repeat(np.arange(len(rings)), [len(ring) for ring in rings])
    return np.asarray(shapely.polygons(shapely.linearrings(np.concatenate(rings), indices=index)))


def _last_of_each(owner: np.ndarray, area: np.ndarray) -> np.ndarray:
    """Index of the largest area of every owner."""
    order = np.lexsort((area, owner))
    is_last = np.append(np.diff(owner[order]) > 0, True)
    return np.asarray(order[is_last])
