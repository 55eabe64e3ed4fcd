"""Lines that a mason measures to: edges, jambs, heads, sills, strips, each once."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from math import floor

from app.brickwork.layout import Layout
from app.panel.shapes import Arch, Circle, Polygon, Rect, Shape
from app.panel.tolerance import TOLERANCE
from app.panel.values import Panel


@dataclass(frozen=True, slots=True)
class Control:
    """A line across the face (at a height) or up it (at an x), inches in the face frame, and what lies on it."""

    at: float
    what: str
    marks: tuple[str, ...] = ()

    @property
    def words(self) -> str:
        """What lies on the line, as read on a drawing: "sill W1, W2"."""
        return f"{self.what} {', '.join(self.marks)}".rstrip()


@lru_cache(maxsize=64)
def across(panel: Panel) -> tuple[Control, ...]:
    """Lines up the face in the order of their x: edges and corners, jambs, upright strips."""
    found = [Control(x, "edge") for x, _ in panel.outline_inches]
    for opening in panel.openings:
        found += [Control(x, what, (opening.mark,)) for x, what in _jambs(opening.shape)]
    for strip in panel.strips:
        xs = {x.nm for x, _ in strip.line}
        found += [Control(strip.line[0][0].inches, "strip", (strip.mark,))] if len(xs) == 1 else []
    return _joined(control for control in found if -TOLERANCE <= control.at <= panel.width + TOLERANCE)


@lru_cache(maxsize=64)
def up(panel: Panel) -> tuple[Control, ...]:
    """Lines across the face in the order of their height: edges and corners, sills, heads, level strips.

    A door that breaks the lower edge has no sill.
    """
    found = [Control(y, "edge") for _, y in panel.outline_inches]
    for opening in panel.openings:
        levels = [(y, what) for y, what in _levels(opening.shape) if TOLERANCE < y < panel.height - TOLERANCE]
        found += [Control(y, what, (opening.mark,)) for y, what in levels]
    for strip in panel.strips:
        ys = {y.nm for _, y in strip.line}
        found += [Control(strip.line[0][1].inches, "strip", (strip.mark,))] if len(ys) == 1 else []
    return _joined(control for control in found if -TOLERANCE <= control.at <= panel.height + TOLERANCE)


def _jambs(shape: Shape) -> Iterator[tuple[float, str]]:
    match shape:
        case Circle():
            yield shape.x.inches, "centre"
        case Polygon():
            yield from ((x.inches, "jamb") for x, _ in shape.points)
        case Rect() | Arch():
            yield shape.x.inches, "jamb"
            yield shape.x.inches + shape.width.inches, "jamb"


def _levels(shape: Shape) -> Iterator[tuple[float, str]]:
    match shape:
        case Circle():
            yield shape.y.inches, "centre"
        case Polygon():
            ys = sorted(y.inches for _, y in shape.points)
            yield ys[0], "sill"
            yield ys[-1], "head"
        case Rect() | Arch():
            yield shape.y.inches, "sill"
            yield shape.y.inches + shape.height.inches, "head"


def _joined(found: Iterator[Control]) -> tuple[Control, ...]:
    """Equal lines as one; an edge's line keeps its name, others gather their marks."""
    lines: list[Control] = []
    last: dict[str, int] = {}
    for control in sorted(found, key=lambda control: (control.at, control.what)):
        same = last.get(control.what)
        if same is None or control.at - lines[same].at > TOLERANCE:
            last[control.what] = len(lines)
            lines.append(control)
        else:
            marks = dict.fromkeys((*lines[same].marks, *control.marks))
            lines[same] = Control(lines[same].at, control.what, tuple(marks))
    return tuple(lines)


def off_course(layout: Layout, control: Control) -> float:
    """How far the brick at a head or a sill stops from the nearest joint of the field's courses, inches, up positive;
    0 where it meets one and no brick is cut.

    The brick stops one margin above a head and one below a sill.
    """
    margin = layout.panel.margin.inches if layout.panel.margin is not None else layout.size.head_joint.inches
    stop = control.at + margin if control.what == "head" else control.at - margin
    into, height = _into_course(layout, stop), layout.size.height.inches
    if into >= height - TOLERANCE or into <= TOLERANCE:
        return 0.0
    return height - into if height - into <= into else -into


def _into_course(layout: Layout, height: float) -> float:
    """How far a height is over the foot of the course it is in, as courses really stand, inches."""
    up, origin, gauge = layout.lines.up, layout.origin[1], layout.size.gauge
    course = floor((up.nominal(height) - origin + TOLERANCE) / gauge)
    return height - float(up.real(origin + course * gauge))
