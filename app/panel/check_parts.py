"""Faults of strips, plates and fixing lines."""

import shapely

from app.panel.check_shapes import length_faults, outside_faults, shape_faults
from app.panel.faults import Fault
from app.panel.geometry import inches
from app.panel.shapes import Point
from app.panel.tolerance import TOLERANCE
from app.panel.values import Fixing, Plate, Strip
from app.panel.wording import said, said_point


def strip_faults(strips: tuple[Strip, ...], face: shapely.Polygon | None, unit: str) -> list[Fault]:
    """Faults of every strip: its width, and its line."""
    faults: list[Fault] = []
    for k, strip in enumerate(strips):
        faults += length_faults(strip.width, f"strips[{k}].width", "width", unit)
        faults += _line_faults(strip.line, f"strips[{k}].line", face, unit)
    return faults


def plate_faults(plates: tuple[Plate, ...], face: shapely.Polygon | None, unit: str) -> list[Fault]:
    """Faults of every plate: its shape, and where it is."""
    faults: list[Fault] = []
    for k, plate in enumerate(plates):
        alone = shape_faults(plate.shape, f"plates[{k}]", unit)
        if face is not None and not alone:
            alone = outside_faults(plate.shape, face, f"plates[{k}]", unit)
        faults += alone
    return faults


def fixing_faults(fixings: tuple[Fixing, ...], face: shapely.Polygon | None, unit: str) -> list[Fault]:
    """Faults of every fixing line."""
    return [
        fault
        for k, fixing in enumerate(fixings)
        for fault in _line_faults(fixing.line, f"fixings[{k}].line", face, unit)
    ]


def _line_faults(line: tuple[Point, ...], path: str, face: shapely.Polygon | None, unit: str) -> list[Fault]:
    if len(line) < 2:
        return [Fault(path, "1 point" if line else "no points", "at least 2 points")]
    drawn = shapely.LineString(inches(line))
    if drawn.length <= TOLERANCE:
        return [Fault(path, f"a line of no length at {said_point(line[0], unit)}", "points at different places")]
    if face is None or drawn.intersects(face):
        return []
    found = f"a line from {said_point(line[0], unit)} to {said_point(line[-1], unit)}, outside the panel"
    _, _, x1, y1 = face.bounds
    expected = f"a line that reaches the panel, 0 to {said(x1, unit)} across and 0 to {said(y1, unit)} up"
    return [Fault(path, found, expected)]
