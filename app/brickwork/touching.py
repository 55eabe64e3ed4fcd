"""Which bricks of a face touch: those with no more than a joint between them along some length of it."""

import numpy as np
import shapely
from numpy.typing import NDArray

from app.brickwork.lattice import Floats, Ints
from app.brickwork.layout import Layout
from app.brickwork.pieces import bounds
from app.brickwork.turning import turned_pieces, turned_points
from app.panel.tolerance import TOLERANCE

Pairs = NDArray[np.int64]

REACH = 1.5
"""In joints: joints give by no more than a third, and no brick fits into half a joint more."""


def touching(layout: Layout) -> Pairs:
    """Pairs of units (counts in `Layout.units`, the lower number first) that touch along a head or bed joint.

    Shape (pairs, 2). Of a piece cut askew, and of one beside another region's turned bond, the box counts, so a pair
    too many may be found but none is missed. Bricks that meet corner to corner do not touch. None for no units.
    """
    units = layout.units
    face = np.column_stack([units.x, units.y, units.x + units.width, units.y + units.height])
    reach = _reach(layout)[units.zone] if len(units) else np.zeros(0)
    first, second = _near(face, reach)
    is_touching = _touch(face, reach, first, second)
    for zone, region in enumerate(layout.regions):
        if region.bond.turn:
            within = np.flatnonzero((units.zone[first] == zone) & (units.zone[second] == zone))
            own = _turned_back(layout, zone, face)
            is_touching[within] = _touch(own, reach, first[within], second[within])
    return np.column_stack([first[is_touching], second[is_touching]])


def _reach(layout: Layout) -> Floats:
    """How far apart bricks of each region may stand and still touch, inches."""
    sizes = [region.size for region in layout.regions]
    return REACH * np.array([max(size.head_joint.inches, size.gauge - size.height.inches) for size in sizes])


def _near(face: Floats, reach: Floats) -> tuple[Ints, Ints]:
    """Pairs whose boxes, each grown by half its reach, meet."""
    half = reach.max(initial=0.0) / 2
    boxes = shapely.box(*np.hstack([face[:, :2] - half, face[:, 2:] + half]).T)
    first, second = shapely.STRtree(boxes).query(boxes)
    is_once = first < second
    order = np.lexsort((second[is_once], first[is_once]))
    return first[is_once][order], second[is_once][order]


def _touch(boxes: Floats, reach: Floats, first: Ints, second: Ints) -> NDArray[np.bool_]:
    gap = np.maximum(boxes[first, :2], boxes[second, :2]) - np.minimum(boxes[first, 2:], boxes[second, 2:])
    far = np.maximum(reach[first], reach[second])
    across, up = gap[:, 0], gap[:, 1]
    found: NDArray[np.bool_] = ((across <= far) & (up < -TOLERANCE)) | ((up <= far) & (across < -TOLERANCE))
    return found


def _turned_back(layout: Layout, zone: int, face: Floats) -> Floats:
    """The units' boxes in the frame of one region's bond; those of other regions are of no use in it."""
    units, region, boxes = layout.units, layout.regions[zone], face.copy()
    faces = np.array([cell.face(region.size) for cell in region.bond.cells])
    size = faces[np.minimum(units.cell, len(faces) - 1)]
    centre = turned_points((face[:, :2] + face[:, 2:]) / 2, -region.bond.turn)
    whole = np.hstack([centre - size / 2, centre + size / 2])
    boxes[~units.is_trimmed] = whole[~units.is_trimmed]
    boxes[layout.trims.unit] = np.column_stack(bounds(turned_pieces(layout.trims.pieces, -region.bond.turn)))
    return boxes
