"""Lines across the tape: where the liner is held, and the control lines that are read."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from math import inf

from app.brickwork.layout import Layout
from app.brickwork.regions import zone_extent
from app.liner.tape import Tape
from app.panel.geometry import edge_margins, inches, kept_margin, outline_polygon, shape_polygon
from app.panel.project import Liner
from app.panel.shapes import Point
from app.panel.tolerance import TOLERANCE

Line = tuple[float, str]
"""Running dimension in inches, and what is there."""

Point2 = tuple[float, float]


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

    Those are parts of strips and of fixing lines square to the tape, and edges of the form on the starting side that
    the brick reaches; with a margin the liner stops short of the form. A line that ends less than one sheet short of
    the brick field's end still holds the last sheet. The form's far edge holds nothing, as liner that grows past it
    has nowhere to go back to; nor do openings, as the liner around them is one with the next sheets. Inches.
    """
    sheet = liner.rows * layout.size.gauge if tape.axis == "x" else liner.columns * layout.size.head_module
    low, high = layout.field.bounds[1::2] if tape.axis == "x" else layout.field.bounds[::2]
    found = [Hold(0.0, "starting corner")]
    for position, name, (start, end) in _holding(layout, tape):
        running = tape.running(position)
        if TOLERANCE < running < tape.reach - TOLERANCE:
            runs = (-inf if start < low + sheet else start), (inf if end > high - sheet else end)
            found.append(Hold(running, name, *runs))
    return sorted(found, key=lambda hold: hold.at)


def _holding(layout: Layout, tape: Tape) -> Iterator[tuple[float, str, Point2]]:
    """Position in the face frame, name, and ends the other way of what may hold the liner."""
    drawn = [(f"strip {strip.mark}", strip.line) for strip in layout.panel.strips]
    drawn += [(f"fixing {k + 1}", fixing.line) for k, fixing in enumerate(layout.panel.fixings)]
    for name, line in drawn:
        for position, ends in _crossing(line, tape).items():
            yield position, name, ends
    yield from _form_edges(layout, tape)


def _form_edges(layout: Layout, tape: Tape) -> Iterator[tuple[float, str, Point2]]:
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
    turn = (1 if outline_polygon(panel).exterior.is_ccw else -1) * (1 if axis else -1)
    for k, a, b in square:
        ends_the_brick = turn * (b[1 - axis] - a[1 - axis]) < 0
        if ends_the_brick == tape.is_turned and margins[k] <= TOLERANCE:
            low, high = sorted((a[1 - axis], b[1 - axis]))
            yield a[axis], f"edge {k}", (low, high)


def _crossing(line: tuple[Point, ...], tape: Tape) -> dict[float, Point2]:
    """Positions along the tape of the line's parts square to it, each with the part's ends the other way."""
    axis = 0 if tape.axis == "x" else 1
    found: dict[float, Point2] = {}
    for a, b in pairwise(inches(line)):
        if abs(a[axis] - b[axis]) <= TOLERANCE:
            low, high = sorted((a[1 - axis], b[1 - axis]))
            before = found.get(a[axis], (low, high))
            found[a[axis]] = (min(before[0], low), max(before[1], high))
    return found


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
        for position in _crossing(strip.line, tape):
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
    """Edges of the outline square to the tape, by their numbers; the far one upwards by name."""
    axis = 0 if tape.axis == "x" else 1
    points = layout.panel.outline_inches
    far = tape.running(tape.reach)
    sides = enumerate(pairwise((*points, points[0])))
    square = [(a[axis], f"edge {k}") for k, (a, b) in sides if abs(a[axis] - b[axis]) <= TOLERANCE]
    at_far = [line for line in square if abs(line[0] - far) <= TOLERANCE]
    yield from (line for line in square if line not in at_far)
    if tape.axis == "y":
        yield far, "base" if tape.is_turned else "top"
    else:
        yield from at_far or [(far, "far edge")]
