"""Faults of one shape on the face: a size of 0 or less or past 100 ft, too much rise, a polygon that crosses itself."""

import shapely

from app.lengths import Length
from app.panel.check_outline import LONGEST_INCHES, is_thin, polygon_faults
from app.panel.faults import Fault
from app.panel.geometry import shape_polygon
from app.panel.shapes import Arch, Circle, Polygon, Rect, Shape
from app.panel.values import Band
from app.panel.wording import said

KEYS: dict[type, str] = {Rect: "rect", Polygon: "polygon", Circle: "circle", Arch: "arch", Band: "band"}
"""What a shape is called in a project file."""


def shape_path(shape: Shape | Band, path: str) -> str:
    """Path of the shape inside the thing at `path`: `openings[1].rect`."""
    return f"{path}.{KEYS[type(shape)]}"


def shape_faults(shape: Shape, path: str, unit: str) -> list[Fault]:
    """What keeps the shape of the thing at `path` from being drawn."""
    path = shape_path(shape, path)
    match shape:
        case Polygon(points=points):
            return polygon_faults(points, path, unit)
        case Circle(radius=radius):
            return length_faults(radius, f"{path}[2]", "radius", unit)
        case Rect(width=width, height=height):
            return _box_faults(width, height, path, unit)
        case Arch(width=width, height=height):
            return _box_faults(width, height, path, unit) or _rise_faults(shape, path, unit)


def outside_faults(shape: Shape, face: shapely.Polygon, path: str, unit: str) -> list[Fault]:
    """A fault for a sound shape that covers nothing of the face."""
    polygon = shape_polygon(shape)
    if not is_thin(polygon.intersection(face)):
        return []
    x0, y0, x1, y1 = polygon.bounds
    found = f"a shape from {said(x0, unit)} to {said(x1, unit)} across and {said(y0, unit)} to {said(y1, unit)} up"
    return [Fault(shape_path(shape, path), found, f"a shape at least partly inside the outline, {_extent(face, unit)}")]


def length_faults(length: Length, path: str, name: str, unit: str) -> list[Fault]:
    """A fault for a length that is not above 0 and at most 100 ft."""
    if 0 < length.inches <= LONGEST_INCHES:
        return []
    expected = f"a {name} of more than 0 and at most {said(LONGEST_INCHES, unit)}"
    return [Fault(path, said(length, unit), expected)]


def _extent(face: shapely.Polygon, unit: str) -> str:
    _, _, x1, y1 = face.bounds
    return f"0 to {said(x1, unit)} across and 0 to {said(y1, unit)} up"


def _box_faults(width: Length, height: Length, path: str, unit: str) -> list[Fault]:
    across = length_faults(width, f"{path}[2]", "width", unit)
    return across + length_faults(height, f"{path}[3]", "height", unit)


def _rise_faults(arch: Arch, path: str, unit: str) -> list[Fault]:
    if 0 < arch.rise.nm <= min(arch.width.nm / 2, arch.height.nm):
        return []
    most = f"half the width ({said(arch.width.inches / 2, unit)}) and the height ({said(arch.height, unit)})"
    return [Fault(f"{path}[4]", said(arch.rise, unit), f"a rise of more than 0 and at most {most}")]
