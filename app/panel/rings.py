"""What a drawing needs of a panel's shapes: rings of corners, a middle for words, and where brick is."""

from collections.abc import Sequence
from functools import lru_cache

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from app.panel.geometry import inches, openings_polygon, outline_polygon, shape_polygon, strip_polygon
from app.panel.shapes import Shape
from app.panel.values import Panel, Strip

Floats = NDArray[np.float64]
Rings = list[Floats]
Corner = tuple[float, float]

_STRAIGHT = 1e-6
"""Sine of a turn that is none: far over float round-off, far under that between chords of an arc."""

CHORDS_TURN = 15.0
"""Degrees: chords of a curve turn less at each point (a few degrees for one within 1/512 in. of its chord)."""


def rings(shape: BaseGeometry) -> Rings:
    """All rings of a polygon or of many, holes included, inches, not closed; none for an empty shape."""
    return [shapely.get_coordinates(ring)[:-1] for ring in shapely.get_rings(shapely.get_parts(shape))]


def from_least(points: Sequence[Corner]) -> tuple[Corner, ...]:
    """A ring from its leftmost corner on, the lowest of those, so that equal rings are equal; empty for no corners."""
    first = points.index(min(points)) if points else 0
    return (*points[first:], *points[:first])


def turns_only(ring: Floats) -> Floats:
    """A ring without the corners at which it runs straight on; corners must differ from the next."""
    on = np.concatenate([ring[1:], ring[:1]]) - ring
    back = np.concatenate([on[-1:], on[:-1]])
    lengths = np.hypot(on[:, 0], on[:, 1])
    across = np.abs(back[:, 0] * on[:, 1] - back[:, 1] * on[:, 0])
    turns: Floats = ring[across > _STRAIGHT * lengths * np.concatenate([lengths[-1:], lengths[:-1]])]
    return turns


def ring_area(ring: Floats) -> float:
    """Area inside a ring, in its unit squared; 0 for fewer than three corners."""
    x, y = (ring - ring[:1]).T
    return abs(float(x[:-1] @ y[1:] - y[:-1] @ x[1:])) / 2


def opening_rings(panel: Panel) -> Rings:
    """What the openings take from the outline; none where there are none."""
    return rings(openings_polygon(panel))


def rims(panel: Panel) -> Rings:
    """The outer edge of each part that the openings leave of the outline: a door breaks the lower edge."""
    parts = shapely.get_parts(outline_polygon(panel).difference(openings_polygon(panel)))
    return [shapely.get_coordinates(part.exterior)[:-1] for part in parts]


def lines_less(outlines: Rings, taken: Sequence[tuple[Corner, Corner]]) -> list[Floats]:
    """What is left of rings as open lines when straight lines along them are taken out; none where nothing is left.

    A ring that loses nothing runs on by one point past its start, so that its first corner is mitred as the others.
    """
    closed = shapely.MultiLineString([np.vstack([ring, ring[:1]]) for ring in outlines])
    left = shapely.line_merge(closed.difference(shapely.MultiLineString(taken)))
    lines = [shapely.get_coordinates(line) for line in shapely.get_parts(left)]
    return [np.vstack([line, line[1:2]]) if np.array_equal(line[0], line[-1]) else line for line in lines if len(line)]


def strip_rings(panel: Panel, strip: Strip) -> Rings:
    """The strip as far as it lies on the panel."""
    return rings(strip_polygon(inches(strip.line), strip.width.inches).intersection(outline_polygon(panel)))


def shape_rings(shape: Shape) -> Rings:
    """The rings of a drawn shape."""
    return rings(shape_polygon(shape))


@lru_cache(maxsize=1024)
def place_for_words(shape: Shape) -> tuple[float, float, float, float]:
    """A point inside the shape, its middle where that is inside, and its width and height, inches."""
    polygon = shape_polygon(shape)
    middle = polygon.centroid if polygon.contains(polygon.centroid) else polygon.representative_point()
    x0, y0, x1, y1 = polygon.bounds
    return middle.x, middle.y, x1 - x0, y1 - y0


def is_within(shape: BaseGeometry, x: Floats, y: Floats) -> NDArray[np.bool_]:
    """Whether each point is inside the shape; nowhere for an empty one."""
    shapely.prepare(shape)
    within: NDArray[np.bool_] = shapely.contains_xy(shape, x, y)
    return within
