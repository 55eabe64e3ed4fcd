"""Where two layouts of one panel differ, as areas that can be ringed on a drawing."""

from collections.abc import Iterable

import numpy as np
import shapely
from numpy.typing import NDArray

from app.brickwork.layout import Layout
from app.brickwork.regions import zone_extent
from app.panel.geometry import inches, outline_polygon, shape_polygon, strip_polygon
from app.panel.rings import Rings

Floats = NDArray[np.float64]

SAME = 1 / 1024
"""Inches: pieces that differ by less are the same piece."""

STEP = 2.0
"""Courses of the field in a step of the grid on which changed pieces are gathered."""


def changed_rings(earlier: Layout, later: Layout) -> Rings:
    """Outer rings around all that differs, face frame, inches; what lies within two steps of each other is one.

    Pieces of brick that came, went or changed, and drawn shapes that did; nothing for two layouts that are the same.
    """
    step = STEP * later.size.gauge
    cells = [*_cells(_changed_boxes(earlier, later), step), *_changed_shapes(earlier, later)]
    if not cells:
        return []
    whole = shapely.union_all(cells).buffer(step, join_style="mitre").buffer(-step / 2, join_style="mitre")
    return [shapely.get_coordinates(part.exterior)[:-1] for part in shapely.get_parts(whole)]


def _changed_boxes(earlier: Layout, later: Layout) -> Floats:
    """Pieces that only one of the two has: x, y, width, height."""
    rows = np.concatenate([_rows(earlier), _rows(later)])
    kept, counts = np.unique(rows, axis=0, return_counts=True)
    boxes: Floats = kept[counts == 1][:, :4] * SAME
    return boxes


def _rows(layout: Layout) -> NDArray[np.int64]:
    units = layout.units
    sides = np.column_stack([units.x, units.y, units.width, units.height])
    rows = np.column_stack([np.rint(sides / SAME), units.kind, units.is_trimmed]).astype(np.int64)
    return np.unique(rows, axis=0)


def _cells(boxes: Floats, step: float) -> list[shapely.Geometry]:
    """Boxes gathered to runs of grid cells, so that thousands of bricks become some hundred rectangles."""
    if not len(boxes):
        return []
    low, high = np.floor(boxes[:, :2] / step), np.ceil((boxes[:, :2] + boxes[:, 2:]) / step)
    origin = low.min(axis=0)
    columns, rows = (high.max(axis=0) - origin).astype(int)
    grid = np.zeros((rows, columns), dtype=bool)
    for (x0, y0), (x1, y1) in zip((low - origin).astype(int), (high - origin).astype(int), strict=True):
        grid[y0:y1, x0:x1] = True
    edges = np.diff(np.pad(grid, ((0, 0), (1, 1))).astype(np.int8), axis=1)
    starts, ends = np.argwhere(edges == 1), np.argwhere(edges == -1)
    x0, x1 = (starts[:, 1] + origin[0]) * step, (ends[:, 1] + origin[0]) * step
    y0 = (starts[:, 0] + origin[1]) * step
    return list(shapely.box(x0, y0, x1, y0 + step))


def _changed_shapes(earlier: Layout, later: Layout) -> Iterable[shapely.Geometry]:
    was, now = _shapes(earlier), _shapes(later)
    for key in dict.fromkeys([*was, *now]):
        one, other = was.get(key), now.get(key)
        if one is None or other is None:
            yield one or other
        elif not one.equals(other):
            yield from (one, other) if key != "outline" else [one.symmetric_difference(other)]


def _shapes(layout: Layout) -> dict[str, shapely.Geometry]:
    panel, field = layout.panel, layout.field
    return {
        "outline": outline_polygon(panel),
        **{f"openings/{one.mark}": shape_polygon(one.shape) for one in panel.openings},
        **{f"plates/{one.mark}": shape_polygon(one.shape) for one in panel.plates},
        **{f"strips/{one.mark}": strip_polygon(inches(one.line), one.width.inches) for one in panel.strips},
        **{f"zones/{one.mark}": zone_extent(one, layout.lines, layout.size.gauge, field) for one in panel.zones},
        **{f"fixings/{inches(one.line)}": shapely.LineString(inches(one.line)).buffer(1.0) for one in panel.fixings},
    }
