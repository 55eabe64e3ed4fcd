"""Control lines of a panel: where its bricks start and end along each axis, as conditions on the field's grid."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from app.brickwork.fit_lines import Control, Grid1
from app.panel.geometry import edge_margins, inches, kept_margin, outline_polygon, shape_polygon, side_margins
from app.panel.shapes import Circle, Polygon
from app.panel.tolerance import TOLERANCE
from app.panel.values import Band, Opening, Panel

_INSIDE = 0.125
"""Inches from a control into the brick beside it, where brick must be for the control to count."""

_NAMES = {0: ("left jamb", "right jamb", "left edge", "right edge"), 1: ("sill", "head", "base", "top")}
_SIDES = {0: ("left", "right"), 1: ("below", "above")}

Ends = tuple[float, float]
Segment = tuple[tuple[float, float], tuple[float, float]]


@dataclass(frozen=True, slots=True)
class _Line:
    """One line square to the axis: drawn at `edge`, brick `margin` away from it, over `across` the other way."""

    name: str
    matter: str
    edge: float
    margin: float
    ends: bool
    across: Ends

    @property
    def brick(self) -> float:
        return self.edge - self.margin if self.ends else self.edge + self.margin

    def control(self, grid: Grid1, axis: int) -> Control:
        at = self.brick - grid.unit if self.ends else self.brick
        x, y = _point(self.edge, sum(self.across) / 2, axis)
        return Control(self.name, at, self.matter, self.edge, self.ends, x, y)

    def beside(self, axis: int) -> Segment:
        place = self.brick - _INSIDE if self.ends else self.brick + _INSIDE
        return _point(place, self.across[0], axis), _point(place, self.across[1], axis)


def course_controls(panel: Panel, field: BaseGeometry, margin: float, grid: Grid1) -> tuple[Control, ...]:
    """Controls of the courses, rising: base, sills, heads, zone edges, strips, top and other level edges.

    `field` is the panel's brick field and `margin` what is kept where nothing is typed, inches. A line counts where
    the field's own brick stands beside it; none for an empty field. Of circles the lowest and highest points count, of
    polygons level sides that are its lowest or highest.
    """
    return _controls(panel, field, margin, grid, 1)


def head_joint_controls(panel: Panel, field: BaseGeometry, margin: float, grid: Grid1) -> tuple[Control, ...]:
    """Controls of the head joints, from the left: jambs, zone edges, strips and upright edges, as `course_controls`;
    none of circles."""
    return _controls(panel, field, margin, grid, 0)


def _controls(panel: Panel, field: BaseGeometry, margin: float, grid: Grid1, axis: int) -> tuple[Control, ...]:
    kept = kept_margin(panel, margin)
    lines = [
        *_edge_lines(panel, kept, axis),
        *(line for opening in panel.openings for line in _opening_lines(panel, opening, kept, axis)),
        *_strip_lines(panel, axis),
        *_zone_lines(panel, grid.joint, axis),
    ]
    beside = shapely.linestrings(np.array([line.beside(axis) for line in lines]).reshape(-1, 2, 2))
    reached = shapely.length(shapely.intersection(beside, _own_field(panel, field))) > TOLERANCE
    counted = [line.control(grid, axis) for line, is_reached in zip(lines, reached, strict=True) if is_reached]
    return tuple(sorted(counted, key=lambda control: control.at))


def _point(along: float, across: float, axis: int) -> tuple[float, float]:
    return (along, across) if axis == 0 else (across, along)


def _own_field(panel: Panel, field: BaseGeometry) -> BaseGeometry:
    """The field less the zones drawn in it; bands follow the field's own courses."""
    zones = [shape_polygon(zone.region) for zone in panel.zones if not isinstance(zone.region, Band)]
    return field.difference(shapely.union_all(zones)) if zones else field


def _edge_lines(panel: Panel, kept: float, axis: int) -> Iterator[_Line]:
    points, margins = panel.outline_inches, edge_margins(panel, kept)
    turn = 1.0 if outline_polygon(panel).exterior.is_ccw else -1.0
    low, high = min(point[axis] for point in points), max(point[axis] for point in points)
    square = [(k, a, b) for k, (a, b) in enumerate(pairwise((*points, points[0]))) if _is_square(a, b, axis)]
    places = [a[axis] for _, a, _ in square]
    for k, a, b in square:
        ends = turn * (b[1 - axis] - a[1 - axis]) * (1 if axis == 1 else -1) < 0
        is_far = places.count(a[axis]) == 1 and a[axis] == (high if ends else low)
        name = _NAMES[axis][2 + ends] if is_far else f"edge {k}"
        across = min(a[1 - axis], b[1 - axis]), max(a[1 - axis], b[1 - axis])
        yield _Line(name, panel.fit.matter.edges, a[axis], margins[k], ends, across)


def _is_square(a: tuple[float, float], b: tuple[float, float], axis: int) -> bool:
    return abs(a[axis] - b[axis]) <= TOLERANCE


def _opening_lines(panel: Panel, opening: Opening, kept: float, axis: int) -> Iterator[_Line]:
    if isinstance(opening.shape, Circle) and axis == 0:
        return
    bounds, margins = shape_polygon(opening.shape).bounds, side_margins(opening, kept)
    across = bounds[1 - axis], bounds[3 - axis]
    matter = panel.fit.matter
    matters = (matter.jambs, matter.jambs) if axis == 0 else (matter.sills, matter.heads)
    for far in (0, 1):
        edge, side = bounds[axis + 2 * far], f"{_NAMES[axis][far]} {opening.mark}"
        if not isinstance(opening.shape, Polygon) or _has_side(opening.shape, edge, axis):
            yield _Line(side, matters[far], edge, margins[axis + 2 * far], not far, across)


def _has_side(polygon: Polygon, edge: float, axis: int) -> bool:
    points = inches(polygon.points)
    sides = pairwise((*points, points[0]))
    return any(_is_square(a, b, axis) and abs(a[axis] - edge) <= TOLERANCE for a, b in sides)


def _strip_lines(panel: Panel, axis: int) -> Iterator[_Line]:
    """A strip takes brick over its width and has no margin."""
    for strip in panel.strips:
        name, half = f"strip {strip.mark}", strip.width.inches / 2
        for a, b in pairwise(inches(strip.line)):
            if _is_square(a, b, axis):
                across = min(a[1 - axis], b[1 - axis]), max(a[1 - axis], b[1 - axis])
                edges = a[axis] - half, a[axis] + half
                yield from _both_sides(name, panel.fit.matter.strips, edges, 0.0, across, axis)


def _zone_lines(panel: Panel, joint: float, axis: int) -> Iterator[_Line]:
    """The field ends a joint below and left of a zone, and starts at its upper and right side."""
    for zone in panel.zones:
        if isinstance(zone.region, Band):
            continue
        bounds = shape_polygon(zone.region).bounds
        across, edges = (bounds[1 - axis], bounds[3 - axis]), (bounds[axis], bounds[axis + 2])
        for line in _both_sides(f"zone {zone.mark}", panel.fit.matter.zones, edges, joint, across, axis):
            if not isinstance(zone.region, Polygon) or _has_side(zone.region, line.edge, axis):
                yield line


def _both_sides(name: str, matter: str, edges: Ends, joint: float, across: Ends, axis: int) -> tuple[_Line, _Line]:
    near, far = (f"{name}, {side}" for side in _SIDES[axis])
    return _Line(near, matter, edges[0], joint, True, across), _Line(far, matter, edges[1], 0.0, False, across)
