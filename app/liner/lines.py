"""Lines across the tape: where the liner is held, and the control lines that are read."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from math import inf

import numpy as np
import shapely

from app.brickwork.layout import Layout
from app.brickwork.regions import zone_extent
from app.liner.line_parts import Across, Part, Point2, joined
from app.liner.square_lines import drawn_lines, square_parts
from app.liner.tape import Tape
from app.panel.geometry import edge_margins, kept_margin, openings_polygon, outline_polygon, shape_polygon
from app.panel.project import Liner
from app.panel.tolerance import TOLERANCE

Line = tuple[float, str]
"""Running dimension in inches, and what is there."""


@dataclass(frozen=True, slots=True)
class Hold:
    """A line that holds the liner: its running dimension, what it is, and from where to where it holds the other way.

    `low` and `high` are in the face frame, inches, endless where the line holds all there is on that side.
    """

    at: float
    name: str
    low: float = -inf
    high: float = inf

    @property
    def is_whole(self) -> bool:
        """Whether it holds the liner over the whole brick field."""
        return self.low == -inf and self.high == inf


def held_lines(layout: Layout, tape: Tape, liner: Liner) -> list[Line]:
    """Where the liner cannot move along the tape, rising: the lines of `holds` that hold over the whole brick field."""
    return [(hold.at, hold.name) for hold in holds(layout, tape, liner) if hold.is_whole]


def holds(layout: Layout, tape: Tape, liner: Liner) -> list[Hold]:
    """Every line that holds the liner against moving along the tape, rising, the starting corner's edge first.

    Those are parts of strips and of fixing lines square to the tape (see `square_parts`), and edges of the form on the
    starting side that the brick reaches; with a margin the liner stops short of the form. Parts at one place hold as
    one line where less than one sheet of liner lies free between them, openings not counted; so a line that ends less
    than one sheet short of the brick field's end still holds the last sheet. The form's far edge holds nothing, as
    liner that grows past it has nowhere to go back to; nor do openings, as the liner around them is one with the next
    sheets. Inches.
    """
    parts = [part for part in _parts(layout, tape) if TOLERANCE < part.at < tape.reach - TOLERANCE]
    across = _across(layout, tape, liner)
    return [Hold(0.0, "starting corner"), *(Hold(one.at, one.name, one.low, one.high) for one in joined(parts, across))]


def _across(layout: Layout, tape: Tape, liner: Liner) -> Across:
    sheet = liner.rows * layout.size.gauge if tape.axis == "x" else liner.columns * layout.size.head_module
    low, high = layout.field.bounds[1::2] if tape.axis == "x" else layout.field.bounds[::2]
    return Across(low, high, sheet, lambda at: _openings_beyond(layout, tape, at))


def _openings_beyond(layout: Layout, tape: Tape, running: float) -> list[Point2]:
    """From where to where the other way openings lie right beyond a running dimension, rising."""
    openings, other = openings_polygon(layout.panel), 1 if tape.axis == "x" else 0
    if openings.is_empty:
        return []
    at = tape.running(running + 2 * TOLERANCE)
    ends = openings.bounds[other::2]
    line = shapely.LineString([(at, end) if other else (end, at) for end in ends])
    cut = shapely.bounds(shapely.get_parts(openings.intersection(line)))
    cut = cut[~np.isnan(cut[:, 0])]
    return [(float(bounds[other]), float(bounds[other + 2])) for bounds in cut[np.argsort(cut[:, other])]]


def _parts(layout: Layout, tape: Tape) -> Iterator[Part]:
    """What may hold the liner."""
    for name, line in drawn_lines(layout.panel):
        for position, low, high in square_parts(line, tape):
            yield Part(tape.running(position), name, low, high)
    yield from _form_edges(layout, tape)


def _form_edges(layout: Layout, tape: Tape) -> Iterator[Part]:
    """Edges of the form on the starting side without a margin, their brick farther along the tape."""
    panel, axis = layout.panel, 0 if tape.axis == "x" else 1
    points = panel.outline_inches
    square = [
        (k, a, b)
        for k, (a, b) in enumerate(pairwise((*points, points[0])))
        if abs(a[axis] - b[axis]) <= TOLERANCE and tape.running(a[axis]) > TOLERANCE
    ]
    if len(square) < 2:
        return
    margins = edge_margins(panel, kept_margin(panel, layout.size.head_joint.inches))
    is_ccw = outline_polygon(panel).exterior.is_ccw
    for k, a, b in square:
        ends_the_brick = _ends_the_brick(a, b, axis, is_ccw)
        if ends_the_brick == tape.is_turned and margins[k] <= TOLERANCE:
            low, high = sorted((a[1 - axis], b[1 - axis]))
            yield Part(tape.running(a[axis]), _edge_name(layout, a[axis], axis, ends_the_brick), low, high)


def _ends_the_brick(a: Point2, b: Point2, axis: int, is_ccw: bool) -> bool:
    """Whether the panel lies on the lower side of an edge square to an axis: to its left, or below it."""
    return (1 if is_ccw else -1) * (1 if axis else -1) * (b[1 - axis] - a[1 - axis]) < 0


def _edge_name(layout: Layout, at: float, axis: int, ends_the_brick: bool) -> str:
    """An edge of the outline by the side of the bed that it faces: the form's own edge there, or a step in it."""
    ends = [point[axis] for point in layout.panel.outline_inches]
    is_outer = min(abs(at - min(ends)), abs(at - max(ends))) <= TOLERANCE
    side = (("right", "left"), ("foot", "top"))[axis][ends_the_brick]
    return f"{'form edge' if is_outer else 'step in the form'}, bed {side}"


def control_lines(layout: Layout, tape: Tape) -> list[Line]:
    """Control lines along the tape, rising, each with its names ("jamb W1", "head D1"); lines at one place are one.

    Along x: jambs, zone edges, strips, upright edges, the far edge. Along y: sills, heads, zone edges, strips, level
    edges, the top. The edge under the tape's hook is none.
    """
    named: dict[float, list[str]] = {}
    for position, name in _named(layout, tape):
        running = tape.running(position)
        if TOLERANCE < running < tape.reach + TOLERANCE:
            names = named.setdefault(_same(named, running), [])
            names += [name] if name not in names else []
    return [(running, ", ".join(names)) for running, names in sorted(named.items())]


def _same(named: dict[float, list[str]], running: float) -> float:
    return next((known for known in named if abs(known - running) <= TOLERANCE), running)


def _named(layout: Layout, tape: Tape) -> Iterator[Line]:
    axis = 0 if tape.axis == "x" else 1
    low_name, high_name = ("jamb", "jamb") if tape.axis == "x" else ("sill", "head")
    for opening in layout.panel.openings:
        bounds = shape_polygon(opening.shape).bounds
        yield bounds[axis], f"{low_name} {opening.mark}"
        yield bounds[axis + 2], f"{high_name} {opening.mark}"
    for strip in layout.panel.strips:
        for position, _, _ in square_parts(strip.line, tape):
            yield position, f"strip {strip.mark}"
    yield from _zone_edges(layout, tape)
    yield from _edges(layout, tape)


def _zone_edges(layout: Layout, tape: Tape) -> Iterator[Line]:
    """Ends of the zones along the tape, but not where the brick field itself ends."""
    axis = 0 if tape.axis == "x" else 1
    for zone in layout.panel.zones:
        extent = zone_extent(zone, layout.lines, layout.size.gauge, layout.field)
        for position in extent.bounds[axis::2]:
            if tape.low + TOLERANCE < position < tape.high - TOLERANCE:
                yield position, f"zone {zone.mark}"


def _edges(layout: Layout, tape: Tape) -> Iterator[Line]:
    """Edges of the outline square to the tape, by where they are on the bed; the far one upwards by name."""
    axis = 0 if tape.axis == "x" else 1
    points = layout.panel.outline_inches
    far = tape.running(tape.reach)
    is_ccw = outline_polygon(layout.panel).exterior.is_ccw
    square = [
        (a[axis], _edge_name(layout, a[axis], axis, _ends_the_brick(a, b, axis, is_ccw)))
        for a, b in pairwise((*points, points[0]))
        if abs(a[axis] - b[axis]) <= TOLERANCE
    ]
    at_far = [line for line in square if abs(line[0] - far) <= TOLERANCE]
    yield from (line for line in square if line not in at_far)
    if tape.axis == "y":
        yield far, "base" if tape.is_turned else "top"
    else:
        yield from at_far or [(far, "far edge")]
