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
    rings = [[np.asarray(ring) for ring in (*sheet.trim, *sheet.holes)] for sheet in sheets]
    return shapes_of(rings, [len(sheet.holes) > 0 for sheet in sheets])


def shapes_of(rings: Sequence[Sequence[Floats]], has_holes: Sequence[bool]) -> Shapes:
    """One shape for the rings of each trim, at least one ring each: all that lies in an odd number of them."""
    if not rings:
        return np.zeros(0, dtype=np.object_)
    every = [ring for some in rings for ring in some]
    owner = np.repeat(np.arange(len(rings)), [len(some) for some in rings])
    index = np.repeat(np.arange(len(every)), [len(ring) for ring in every])
    parts = shapely.polygons(shapely.linearrings(np.concatenate(every), indices=index))
    shapes: Shapes = shapely.multipolygons(parts, indices=owner)
    for k in np.flatnonzero(has_holes).tolist():
        own = [ring for ring, of in zip(every, owner.tolist(), strict=True) if of == k]
        shapes[k] = _areas(shapely.make_valid(shapely.Polygon(own[0], own[1:])))
    return shapes


def sound(shapes: Shapes) -> Shapes:
    """The same areas, those mended whose sides were brought together until they touched."""
    for k in np.flatnonzero(~shapely.is_valid(shapes)).tolist():
        shapes[k] = _areas(shapely.make_valid(shapes[k]))
    return shapes


def _areas(shape: BaseGeometry) -> BaseGeometry:
    """The shape without the lines that mending leaves."""
    return shapely.MultiPolygon([part for part in _parts(shape) if part.geom_type == "Polygon"])


def _parts(shape: BaseGeometry) -> list[BaseGeometry]:
    parts: list[BaseGeometry] = shapely.get_parts(shapely.get_parts(shape)).tolist()
    return parts


def polygons_in(shape: BaseGeometry) -> list[shapely.Polygon]:
    """The polygons of a shape, without the points and lines in it."""
    return [part for part in _parts(shape) if part.geom_type == "Polygon" and not part.is_empty]


def rings_of(part: shapely.Polygon) -> tuple[Ring, tuple[Ring, ...]]:
    """The outline and the holes of a polygon, corners not repeated."""
    outer, *holes = (tuple((x, y) for x, y in ring.coords[:-1]) for ring in shapely.get_rings(part))
    return outer, tuple(holes)
