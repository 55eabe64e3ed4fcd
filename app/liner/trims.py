"""Trims of sheets as shapes, and shapes as rings."""

from collections.abc import Sequence

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from app.brickwork.lattice import Floats
from app.liner.cuts import Ring
from app.liner.values import Sheet

Shapes = NDArray[np.object_]


def trim_shapes(sheets: Sequence[Sheet]) -> Shapes:
    """What is left of each sheet, as one shape each; an empty array for no sheets."""
    if not sheets:
        return np.zeros(0, dtype=np.object_)
    rings = [np.asarray(ring) for sheet in sheets for ring in sheet.trim]
    owner = np.repeat(np.arange(len(sheets)), [len(sheet.trim) for sheet in sheets])
    index = np.repeat(np.arange(len(rings)), [len(ring) for ring in rings])
    parts = shapely.polygons(shapely.linearrings(np.concatenate(rings), indices=index))
    shapes: Shapes = shapely.multipolygons(parts, indices=owner)
    for k, sheet in enumerate(sheets):
        if sheet.holes:
            shapes[k] = in_odd_rings([np.asarray(ring) for ring in (*sheet.trim, *sheet.holes)])
    return shapes


def in_odd_rings(rings: Sequence[Floats]) -> BaseGeometry:
    """All that lies in an odd number of rings, so that a part within a hole of another counts."""
    if len(rings) == 1:
        return shapely.Polygon(rings[0])
    return shapely.symmetric_difference_all([shapely.Polygon(ring) for ring in rings])


def polygons_in(shape: BaseGeometry) -> list[shapely.Polygon]:
    """The polygons of a shape, without the points and lines in it."""
    return [part for part in shapely.get_parts(shape) if part.geom_type == "Polygon" and not part.is_empty]


def rings_of(part: shapely.Polygon) -> tuple[Ring, tuple[Ring, ...]]:
    """The outline and the holes of a polygon, corners not repeated."""
    outer, *holes = (tuple((x, y) for x, y in ring.coords[:-1]) for ring in shapely.get_rings(part))
    return outer, tuple(holes)
