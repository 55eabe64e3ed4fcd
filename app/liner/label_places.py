"""Where words stand on liner sheets."""

from collections.abc import Sequence
from functools import reduce
from math import hypot

import numpy as np
import shapely
from numpy.typing import NDArray

from app.liner.cuts import Ring
from app.liner.values import Sheet

Floats = NDArray[np.float64]

_FINE = 0.25
"""Inches; how near to the roomiest place a number stands."""


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


def lie_on(sheets: Sequence[Sheet], boxes: Floats) -> NDArray[np.bool_]:
    """Whether each box (left, lower, right, upper; inches) lies wholly on one part of its sheet's trim.

    `boxes` has shape (..., sheets, 4); the answer has (..., sheets).
    """
    rings = [np.asarray(ring) for sheet in sheets for ring in sheet.trim]
    found = np.zeros(boxes.shape[:-1], dtype=np.bool_)
    if rings:
        owner = np.repeat(np.arange(len(sheets)), [len(sheet.trim) for sheet in sheets])
        index = np.repeat(np.arange(len(rings)), [len(ring) for ring in rings])
        parts = shapely.polygons(shapely.linearrings(np.concatenate(rings), indices=index))
        is_on = shapely.contains(parts, shapely.box(*np.moveaxis(boxes[..., owner, :], -1, 0)))
        np.logical_or.at(found.T, owner, is_on.T)
    return found


def roomiest(rings: Sequence[Ring]) -> list[tuple[float, float, float]]:
    """Where each part of a shape has most room for a number, and how far its nearest edge is from there, inches.

    The part with most room comes first; none for no rings.
    """
    if not rings:
        return []
    shape = reduce(shapely.symmetric_difference, map(shapely.Polygon, rings))
    found = []
    for part in shapely.get_parts(shape):
        (x, y), (near_x, near_y) = shapely.maximum_inscribed_circle(part, _FINE).coords
        found.append((x, y, hypot(near_x - x, near_y - y)))
    return sorted(found, key=lambda place: -round(place[2], 2))
