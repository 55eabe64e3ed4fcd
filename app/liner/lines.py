"""Lines across the tape: where the liner is held, and the control lines that are read."""

from collections.abc import Iterator
from itertools import pairwise

from app.brickwork.layout import Layout
from app.brickwork.regions import zone_extent
from app.liner.tape import Tape
from app.panel.geometry import inches, shape_polygon
from app.panel.project import Liner
from app.panel.shapes import Point
from app.panel.tolerance import TOLERANCE

Line = tuple[float, str]
"""Running dimension in inches, and what is there."""

Point2 = tuple[float, float]


def held_lines(layout: Layout, tape: Tape, liner: Liner) -> list[Line]:
    """Where the liner cannot move along the tape, rising: the form's edge at the starting corner, then each strip and
    fixing line that runs across the tape over the whole brick field.

    A line may stop short of the field's end by less than one sheet, as it still holds the last sheet. The form's far
    edge holds nothing: liner that grows past it has nowhere to go back to.
    """
    sheet = liner.rows * layout.size.gauge if tape.axis == "x" else liner.columns * layout.size.head_module
    drawn = [(f"strip {strip.mark}", strip.line) for strip in layout.panel.strips]
    drawn += [(f"fixing {k + 1}", fixing.line) for k, fixing in enumerate(layout.panel.fixings)]
    low, high = layout.field.bounds[1::2] if tape.axis == "x" else layout.field.bounds[::2]
    held = [(0.0, "starting corner")]
    for name, line in drawn:
        for position, (start, end) in _crossing(line, tape).items():
            running = tape.running(position)
            if TOLERANCE < running < tape.reach and start < low + sheet and end > high - sheet:
                held.append((running, name))
    return sorted(held)


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
