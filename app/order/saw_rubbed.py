"""Which notches and skew cuts are too small for a saw, so that they are rubbed off by hand."""

from collections.abc import Sequence

import shapely

from app.order.saw_values import Point
from app.panel.tolerance import TOLERANCE


def is_rubbed(outline: Sequence[Point], whole: tuple[float, float], kerf: float) -> bool:
    """Whether each part that goes of a whole brick is smaller than the kerf along or across; inches.

    A saw takes no less than its kerf (common practice): a corner as large as the kerf both ways is still cut. So it is
    where nothing goes that the saw's step shows. The outline is from the brick's lower-left corner.
    """
    left = shapely.Polygon(outline)
    length, height = whole
    if length * height - left.area > kerf * 2 * (length + height):
        return False
    gone = shapely.get_parts(shapely.box(0, 0, length, height).difference(left, grid_size=TOLERANCE))
    x0, y0, x1, y1 = shapely.bounds(gone[shapely.area(gone) > TOLERANCE]).reshape(-1, 4).T
    return bool((((x1 - x0) < kerf - TOLERANCE) | ((y1 - y0) < kerf - TOLERANCE)).all())
