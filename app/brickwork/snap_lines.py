"""What a hand can meet on a face: lines and corners with names. See `snap_lines` and `snap_corners`."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

import numpy as np

from app.brickwork.bond import KINDS
from app.brickwork.lattice import Floats
from app.brickwork.layout import Layout
from app.panel.geometry import inches, shape_polygon
from app.panel.shapes import Arch, Circle, Polygon, Rect
from app.panel.values import Band, Opening, Panel, Plate, Zone

LEVEL = 1e-6
"""Inches; ends of an edge that differ by less make it level or upright."""


@dataclass(frozen=True, slots=True)
class SnapLine:
    """A line across the whole face at `at` inches: `axis` "x" is upright, "y" is level.

    `kind` is edge, opening, course, head joint, half bat, strip, middle, neighbour or neighbour course; `of` is the key
    of the thing that it belongs to, "" for brick and panel.
    """

    axis: str
    at: float
    kind: str
    name: str
    of: str = ""


@dataclass(frozen=True, slots=True)
class SnapCorner:
    """A point, inches in the face frame."""

    x: float
    y: float
    name: str
    of: str = ""


@dataclass(frozen=True, slots=True)
class Neighbour:
    """A panel beside this one in its wall; `lift` is how much higher its foot stands, inches."""

    layout: Layout
    lift: float


def snap_lines(layout: Layout, neighbours: Iterable[Neighbour] = ()) -> tuple[SnapLine, ...]:
    """Every line that a hand can meet, inches in the face frame; of a turned bond no brick, only what is drawn."""
    return (
        *_outline_lines(layout.panel),
        *_opening_lines(layout.panel.openings),
        *_zone_lines(layout.panel.zones),
        *_plate_lines(layout.panel.plates),
        *_strip_lines(layout.panel),
        *_middles(layout.panel),
        *_courses(layout),
        *_ends(layout),
        *(line for neighbour in neighbours for line in _beside(neighbour)),
    )


def snap_corners(panel: Panel) -> tuple[SnapCorner, ...]:
    """Corners of the outline, of openings, plates and zones, ends of strips, centres of circles."""
    outline = (
        SnapCorner(x, y, f"point {k} of the outline", "outline") for k, (x, y) in enumerate(panel.outline_inches)
    )
    strips = (
        SnapCorner(x, y, f"end of {strip.mark}", f"strips/{strip.mark}")
        for strip in panel.strips
        for x, y in inches(strip.line)
    )
    openings = (
        corner for one in panel.openings for corner in _shape_corners(one.shape, one.mark, f"openings/{one.mark}")
    )
    plates = (corner for one in panel.plates for corner in _shape_corners(one.shape, one.mark, f"plates/{one.mark}"))
    zones = (corner for one in panel.zones for corner in _shape_corners(one.region, one.mark, f"zones/{one.mark}"))
    return (*outline, *openings, *plates, *zones, *strips)


def _outline_lines(panel: Panel) -> Iterator[SnapLine]:
    points = panel.outline_inches
    for k, (a, b) in enumerate(zip(points, (*points[1:], points[0]), strict=True)):
        for axis, n in (("x", 0), ("y", 1)):
            if abs(a[n] - b[n]) < LEVEL:
                yield SnapLine(axis, a[n], "edge", f"edge {k} of the panel", "outline")


def _opening_lines(openings: tuple[Opening, ...]) -> Iterator[SnapLine]:
    for opening in openings:
        left, foot, right, top = shape_polygon(opening.shape).bounds
        of, mark = f"openings/{opening.mark}", opening.mark
        yield SnapLine("x", left, "opening", f"left jamb of {mark}", of)
        yield SnapLine("x", right, "opening", f"right jamb of {mark}", of)
        yield SnapLine("y", foot, "opening", f"sill of {mark}", of)
        yield SnapLine("y", top, "opening", f"head of {mark}", of)
        yield SnapLine("x", (left + right) / 2, "middle", f"middle of {mark}", of)


def _zone_lines(zones: tuple[Zone, ...]) -> Iterator[SnapLine]:
    for zone in zones:
        if not isinstance(zone.region, Band):
            yield from _sides(zone.region, f"of zone {zone.mark}", f"zones/{zone.mark}")


def _plate_lines(plates: tuple[Plate, ...]) -> Iterator[SnapLine]:
    for plate in plates:
        yield from _sides(plate.shape, f"of plate {plate.mark}", f"plates/{plate.mark}")


def _sides(shape: Rect | Polygon, named: str, of: str) -> Iterator[SnapLine]:
    left, foot, right, top = shape_polygon(shape).bounds
    yield SnapLine("x", left, "edge", f"left {named}", of)
    yield SnapLine("x", right, "edge", f"right {named}", of)
    yield SnapLine("y", foot, "edge", f"foot {named}", of)
    yield SnapLine("y", top, "edge", f"top {named}", of)


def _strip_lines(panel: Panel) -> Iterator[SnapLine]:
    """The middle of a level or upright strip and its two sides."""
    for strip in panel.strips:
        line, half = inches(strip.line), strip.width.inches / 2
        for axis, n, sides in (("x", 0, ("left", "right")), ("y", 1, ("lower", "upper"))):
            if max(point[n] for point in line) - min(point[n] for point in line) < LEVEL:
                at, of = line[0][n], f"strips/{strip.mark}"
                yield SnapLine(axis, at, "strip", f"middle of {strip.mark}", of)
                yield SnapLine(axis, at - half, "strip", f"{sides[0]} side of {strip.mark}", of)
                yield SnapLine(axis, at + half, "strip", f"{sides[1]} side of {strip.mark}", of)


def _middles(panel: Panel) -> Iterator[SnapLine]:
    yield SnapLine("x", panel.width / 2, "middle", "middle of the panel")
    yield SnapLine("y", panel.height / 2, "middle", "half the panel's height")


def _courses(layout: Layout) -> Iterator[SnapLine]:
    for course in layout.courses:
        yield SnapLine("y", course.top, "course", f"top of course {course.course}")
        yield SnapLine("y", course.bottom, "course", f"foot of course {course.course}")


def _ends(layout: Layout) -> Iterator[SnapLine]:
    """Both ends and the middles of whole stretchers of the field, in odd and in even courses."""
    units = layout.units
    if layout.bond.turn or not len(units):
        return
    whole = (units.zone == 0) & ~units.is_trimmed
    stretcher = whole & (units.kind == KINDS.index("stretcher"))
    for odd, courses in ((0, "even"), (1, "odd")):
        row = units.course % 2 == odd
        yield from _named(units.x[whole & row], "head joint", f"left end of a brick, {courses} courses")
        ends = (units.x + units.width)[whole & row]
        yield from _named(ends, "head joint", f"right end of a brick, {courses} courses")
        halves = (units.x + units.width / 2)[stretcher & row]
        yield from _named(halves, "half bat", f"half bat, {courses} courses")


def _named(places: Floats, kind: str, name: str) -> Iterator[SnapLine]:
    for at in np.unique(np.round(places, 6)).tolist():
        yield SnapLine("x", at, kind, name)


def _beside(neighbour: Neighbour) -> Iterator[SnapLine]:
    """Courses, heads and sills of a panel beside this one, as they run on through the joint."""
    panel, lift = neighbour.layout.panel, neighbour.lift
    for course in neighbour.layout.courses:
        yield SnapLine("y", course.top + lift, "neighbour course", f"top of course {course.course} of {panel.mark}")
    for line in _opening_lines(panel.openings):
        if line.axis == "y":
            yield SnapLine("y", line.at + lift, "neighbour", f"{line.name} in {panel.mark}")


def _shape_corners(shape: object, mark: str, of: str) -> Iterator[SnapCorner]:
    match shape:
        case Circle():
            yield SnapCorner(shape.x.inches, shape.y.inches, f"centre of {mark}", of)
        case Polygon(points=points):
            for k, (x, y) in enumerate(inches(points)):
                yield SnapCorner(x, y, f"point {k} of {mark}", of)
        case Rect() | Arch():
            left, foot, right, top = shape_polygon(shape).bounds
            yield SnapCorner(left, foot, f"lower left corner of {mark}", of)
            yield SnapCorner(right, foot, f"lower right corner of {mark}", of)
            if isinstance(shape, Rect):
                yield SnapCorner(right, top, f"upper right corner of {mark}", of)
                yield SnapCorner(left, top, f"upper left corner of {mark}", of)
