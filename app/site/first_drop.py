"""Where the first concrete goes: no stream may fall on bare brick, and there is no concrete yet to fall on."""

from dataclasses import dataclass

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from app.panel.geometry import outline_polygon
from app.panel.tolerance import TOLERANCE
from app.site.places import Strip
from app.site.pour_grid import Grid


@dataclass(frozen=True, slots=True)
class Drop:
    """A square of the grid, or what concrete there is of it, inches; the share of it where no brick is, 0 to 1."""

    strip: Strip
    plain: float

    @property
    def middle(self) -> tuple[float, float]:
        return self.strip.x + self.strip.width / 2, self.strip.y + self.strip.height / 2


def first_drop(grid: Grid, field: BaseGeometry, shapes: list[BaseGeometry]) -> tuple[int, Drop]:
    """Which of these bands to begin in, and where: a square at the form's edge with no opening in it.

    Of these the one with the most plain concrete, then the one nearest to the bed's lower left. Where no square is
    whole, or none is at the edge, the best of what there is. `field` is the face's brick field.
    """
    parts, _ = grid.parts
    tree = shapely.STRtree(shapes)
    part, shape = tree.query(shapely.point_on_surface(parts), predicate="intersects")
    if not len(part):
        largest = max(range(len(shapes)), key=lambda k: float(shapes[k].area))
        return largest, _drop(shapes[largest], field)
    found = parts[part]
    plain = 1 - shapely.area(shapely.intersection(found, field)) / shapely.area(found)
    best = int(np.lexsort((_from_corner(grid, found), -plain.round(6), *_faults(grid, found)))[0])
    return int(shape[best]), _drop(found[best], field)


def _faults(grid: Grid, parts: NDArray[np.object_]) -> tuple[NDArray[np.bool_], NDArray[np.bool_]]:
    """What counts more comes last: whether a part is no whole square, whether it is away from the form's edge."""
    is_cut = shapely.area(parts) < grid.step[0] * grid.step[1] - TOLERANCE
    is_away = shapely.distance(parts, outline_polygon(grid.panel).exterior) > TOLERANCE
    return is_cut, is_away


def _from_corner(grid: Grid, parts: NDArray[np.object_]) -> NDArray[np.float64]:
    """Distance from the bed's lower left, which is the face's lower right, inches."""
    middles = shapely.get_coordinates(shapely.centroid(parts))
    far: NDArray[np.float64] = np.hypot(grid.panel.width - middles[:, 0], middles[:, 1]).round(6)
    return far


def _drop(part: BaseGeometry, field: BaseGeometry) -> Drop:
    x0, y0, x1, y1 = part.bounds
    return Drop(Strip(x0, y0, x1 - x0, y1 - y0), max(0.0, 1 - part.intersection(field).area / part.area))
