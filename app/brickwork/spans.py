"""Where a level line runs over a shape."""

import shapely
from shapely.geometry.base import BaseGeometry


def level_spans(shape: BaseGeometry, y: float) -> list[tuple[float, float]]:
    """Left and right end of each stretch in which the line at height y, inches, lies in the shape; none beside it."""
    if shape.is_empty:
        return []
    left, _, right, _ = shape.bounds
    parts = shapely.get_parts(shapely.LineString([(left, y), (right, y)]).intersection(shape))
    return sorted((part.bounds[0], part.bounds[2]) for part in parts if part.length > 0)
