"""Faults of an outline, and of any polygon: too few points, points twice, no area, edges that cross."""

import shapely

from app.lengths import Length
from app.panel.faults import Fault
from app.panel.geometry import inches
from app.panel.shapes import Point
from app.panel.tolerance import TOLERANCE
from app.panel.wording import said, said_move, said_point

LONGEST_INCHES = 1200
"""100 ft either way: a panel longer than this is a slip of the keyboard."""


def outline_faults(points: tuple[Point, ...], unit: str) -> list[Fault]:
    """Faults of a panel's outline: a simple polygon, its bounding box from 0, 0 to at most 100 ft each way."""
    faults = polygon_faults(points, "outline", unit)
    if not points:
        return faults
    return faults + _corner_faults(points, unit) + _size_faults(points, unit)


def polygon_faults(points: tuple[Point, ...], path: str, unit: str) -> list[Fault]:
    """What keeps points from being a simple polygon; the coarsest fault only."""
    if len(points) < 3:
        said_count = f"{len(points)} points" if len(points) != 1 else "1 point"
        return [Fault(path, said_count, "at least 3 points")]
    repeated = _repeated_points(points, path, unit)
    if repeated:
        return repeated
    ring = shapely.Polygon(inches(points))
    if is_thin(ring.convex_hull) or (ring.is_valid and is_thin(ring)):
        return [Fault(path, f"{len(points)} points with an area of 0 between them", "points that enclose an area")]
    return [] if ring.is_valid else [_crossing(points, ring, path, unit)]


def is_thin(shape: shapely.Geometry) -> bool:
    """Whether a shape is nowhere wider than the tolerance; true for an empty one."""
    return bool(shape.area <= TOLERANCE * shape.length)


def _repeated_points(points: tuple[Point, ...], path: str, unit: str) -> list[Fault]:
    first: dict[tuple[int, int], int] = {}
    faults = []
    for k, (x, y) in enumerate(points):
        place = (round(x.inches / TOLERANCE), round(y.inches / TOLERANCE))
        if place in first:
            found = f"{said_point((x, y), unit)}, the place of point {first[place]} again"
            faults.append(Fault(f"{path}[{k}]", found, "every point at a place of its own, the first not repeated"))
        first.setdefault(place, k)
    return faults


def _crossing(points: tuple[Point, ...], ring: shapely.Polygon, path: str, unit: str) -> Fault:
    expected = "edges that meet only at their ends, each with the next"
    ends = inches(points)
    edges = [shapely.LineString([ends[k], ends[(k + 1) % len(ends)]]) for k in range(len(ends))]
    pairs = shapely.STRtree(edges).query(edges, predicate="intersects")
    for a, b in sorted((int(a), int(b)) for a, b in pairs.T if a < b):
        meeting = edges[a].intersection(edges[b])
        if (b - a not in (1, len(edges) - 1)) or meeting.length > 0:
            place = said_point((meeting.centroid.x, meeting.centroid.y), unit)
            return Fault(path, f"edge {a} and edge {b} crossing or touching at {place}", expected)
    return Fault(path, shapely.is_valid_reason(ring), expected)


def _corner_faults(points: tuple[Point, ...], unit: str) -> list[Fault]:
    left = min((x for x, _ in points), key=lambda x: x.nm)
    bottom = min((y for _, y in points), key=lambda y: y.nm)
    if left.nm == 0 and bottom.nm == 0:
        return []
    found = f"a bounding box with its lower left at {said_point((left, bottom), unit)}"
    way = said_move(Length(-left.nm), Length(-bottom.nm), unit)
    return [Fault("outline", found, f"its lower left at 0, 0: every point {way}")]


def _size_faults(points: tuple[Point, ...], unit: str) -> list[Fault]:
    faults = []
    for name, axis in (("width", 0), ("height", 1)):
        values = [point[axis].inches for point in points]
        if max(values) - min(values) > LONGEST_INCHES:
            found = f"a {name} of {said(max(values) - min(values), unit)}"
            faults.append(Fault("outline", found, f"a {name} of at most {said(LONGEST_INCHES, unit)}"))
    return faults
