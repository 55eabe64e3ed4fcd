"""From what a person typed to polygons in float inches, face frame."""

from functools import lru_cache
from math import acos, atan2, ceil, cos, hypot, pi, sin

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from app.panel.shapes import Arch, Circle, Point, Polygon, Rect, Shape
from app.panel.tolerance import TOLERANCE
from app.panel.values import Edge, Opening, Panel, Side

CHORD_ERROR = 1 / 512
"""Largest distance in inches from a drawn arc to its chords: an eighth of the 1/64 in. that a tape shows."""


@lru_cache(maxsize=1024)
def shape_polygon(shape: Shape) -> shapely.Polygon:
    """The shape as a polygon, inches; arcs become chords within `CHORD_ERROR`."""
    match shape:
        case Rect():
            x, y = shape.x.inches, shape.y.inches
            return shapely.box(x, y, x + shape.width.inches, y + shape.height.inches)
        case Polygon():
            return shapely.Polygon(inches(shape.points))
        case Circle():
            return _circle(shape)
        case Arch():
            return _arch(shape)


def inches(points: tuple[Point, ...]) -> list[tuple[float, float]]:
    """Points as float inches."""
    return [(x.inches, y.inches) for x, y in points]


def _steps(radius: float, angle: float) -> int:
    step = 2 * acos(max(-1.0, 1 - CHORD_ERROR / radius)) if radius > CHORD_ERROR else pi
    return max(1, ceil(angle / step))


def _circle(circle: Circle) -> shapely.Polygon:
    x, y, radius = circle.x.inches, circle.y.inches, circle.radius.inches
    count = 4 * _steps(radius, pi / 2)
    angles = np.arange(count) * (2 * pi / count)
    return shapely.Polygon(np.column_stack([x + radius * np.cos(angles), y + radius * np.sin(angles)]))


def _arch(arch: Arch) -> shapely.Polygon:
    x, y, width = arch.x.inches, arch.y.inches, arch.width.inches
    rise, crown = arch.rise.inches, y + arch.height.inches
    springing, middle = crown - rise, x + width / 2
    radius = (width * width / 4 + rise * rise) / (2 * rise)
    centre = crown - radius
    half = atan2(width / 2, springing - centre)
    count = 2 * _steps(radius, half)
    turns = [half - 2 * half * k / count for k in range(1, count)]
    arc = [(middle + radius * sin(turn), centre + radius * cos(turn)) for turn in turns]
    return shapely.Polygon([(x, y), (x + width, y), (x + width, springing), *arc, (x, springing)])


def outline_polygon(panel: Panel) -> shapely.Polygon:
    """The panel's outline, inches."""
    return shapely.Polygon(panel.outline_inches)


@lru_cache(maxsize=64)
def openings_polygon(panel: Panel) -> BaseGeometry:
    """What the openings take from the outline, inches; empty where there are none."""
    if not panel.openings:
        return shapely.Polygon()
    joined = shapely.union_all([shape_polygon(opening.shape) for opening in panel.openings])
    return joined.intersection(outline_polygon(panel))


def brick_field(panel: Panel, margin: float) -> BaseGeometry:
    """Outline shrunk by `margin` inches, less openings grown by it (mitred), less strips and plates.

    A margin typed on the panel, on an edge or on a side of an opening goes before `margin`; `flush` and `return` edges
    and sides have none.
    Empty where nothing is left. Always valid; polygons may be several.
    """
    kept = kept_margin(panel, margin)
    field = _shrunk_outline(panel, kept)
    taken = _grown(panel.openings, kept)
    taken += [strip_polygon(inches(strip.line), strip.width.inches) for strip in panel.strips]
    taken += [shape_polygon(plate.shape) for plate in panel.plates]
    if taken:
        field = field.difference(shapely.union_all(taken))
    return field


def kept_margin(panel: Panel, margin: float) -> float:
    """The margin typed on the panel, else `margin`; inches."""
    return panel.margin.inches if panel.margin is not None else margin


def strip_polygon(line: list[tuple[float, float]], width: float) -> BaseGeometry:
    """A strip of `width` inches along a line, square at its ends so that it reaches past an edge it meets."""
    return shapely.LineString(line).buffer(width / 2, cap_style="flat", join_style="mitre", mitre_limit=10)


def _grown(openings: tuple[Opening, ...], margin: float) -> list[BaseGeometry]:
    """Openings grown by `margin` inches, mitred; rectangles all in one call, as a face may have many."""
    rects = [(opening.shape, opening) for opening in openings if isinstance(opening.shape, Rect)]
    others = [shape_polygon(opening.shape) for opening in openings if not isinstance(opening.shape, Rect)]
    low = np.array([(rect.x.inches, rect.y.inches) for rect, _ in rects]).reshape(-1, 2)
    high = low + np.array([(rect.width.inches, rect.height.inches) for rect, _ in rects]).reshape(-1, 2)
    around = np.full((len(rects), 4), margin)
    for k, (_, opening) in enumerate(rects):
        if opening.sides:
            around[k] = side_margins(opening, margin)
    grown = list(shapely.box(*(low - around[:, :2]).T, *(high + around[:, 2:]).T))
    return grown + [other.buffer(margin, join_style="mitre", mitre_limit=10) if margin else other for other in others]


def side_margins(opening: Opening, margin: float) -> list[float]:
    """Margin at the left, sill, right and head of a rectangular opening, inches; `margin` where nothing is said."""
    own = {side.side: _own_margin(side, margin) for side in opening.sides}
    return [own.get(side, margin) for side in ("left", "sill", "right", "head")]


def _own_margin(thing: Edge | Side, margin: float) -> float:
    if thing.margin is not None:
        return thing.margin.inches
    return 0.0 if thing.treatment in ("flush", "return") else margin


def edge_margins(panel: Panel, margin: float) -> list[float]:
    """Margin along each outline edge, inches, in the order of the outline."""
    margins = [margin] * len(panel.outline)
    for edge in panel.edges:
        margins[edge.edge] = _own_margin(edge, margin)
    return margins


def _shrunk_outline(panel: Panel, margin: float) -> BaseGeometry:
    outline = outline_polygon(panel)
    margins = edge_margins(panel, margin)
    if len(set(margins)) == 1:
        return outline if margins[0] == 0 else outline.buffer(-margins[0], join_style="mitre", mitre_limit=10)
    return outline.difference(shapely.union_all(_edge_strips(panel, margins)))


def _edge_strips(panel: Panel, margins: list[float]) -> list[shapely.Polygon]:
    """What each edge's margin takes away, run on past its corners as far as it must so that no wedge is left."""
    points = panel.outline_inches
    turn = 1.0 if outline_polygon(panel).exterior.is_ccw else -1.0
    strips = []
    for k, margin in enumerate(margins):
        before, start = points[k - 1], points[k]
        end, after = points[(k + 1) % len(points)], points[(k + 2) % len(points)]
        along = _unit(start, end)
        reach_back = margin * _reach(_unit(before, start), along, turn)
        reach_on = margin * _reach(along, _unit(end, after), turn)
        if margin > 0:
            strips.append(_strip_inside(start, end, along, turn * margin, reach_back, reach_on))
    return strips


def _reach(one: tuple[float, float], two: tuple[float, float], turn: float) -> float:
    """How far a strip runs on past the corner between two edges, in widths: a whole one past a corner that turns into
    the panel, none past a right or sharp one, up to the next edge past an obtuse one."""
    across, along = turn * _cross(one, two), one[0] * two[0] + one[1] * two[1]
    if across <= 0:
        return 1.0
    return min(1.0, max(0.0, along / across))


def _strip_inside(
    start: tuple[float, float],
    end: tuple[float, float],
    along: tuple[float, float],
    depth: float,
    reach_back: float,
    reach_on: float,
) -> shapely.Polygon:
    """From a hair outside the edge, so that float round-off leaves no thread of field along it, to `depth` inside."""
    (dx, dy), side = along, (-along[1], along[0])
    a = (start[0] - dx * reach_back, start[1] - dy * reach_back)
    b = (end[0] + dx * reach_on, end[1] + dy * reach_on)
    outside = -10 * TOLERANCE if depth > 0 else 10 * TOLERANCE
    ends = ((a, outside), (b, outside), (b, depth), (a, depth))
    return shapely.Polygon([(x + side[0] * by, y + side[1] * by) for (x, y), by in ends])


def _unit(a: tuple[float, float], b: tuple[float, float]) -> tuple[float, float]:
    length = hypot(b[0] - a[0], b[1] - a[1])
    return (b[0] - a[0]) / length, (b[1] - a[1]) / length


def _cross(a: tuple[float, float], b: tuple[float, float]) -> float:
    return a[0] * b[1] - a[1] * b[0]
