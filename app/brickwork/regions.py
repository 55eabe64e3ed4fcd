"""The parts of the brick field, one for the field's own brickwork and one a zone, a joint kept between them."""

from dataclasses import dataclass
from itertools import pairwise

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from app.brickwork.bond import joints
from app.brickwork.bonds import BONDS
from app.panel.geometry import shape_polygon
from app.panel.size import BrickSize
from app.panel.tolerance import TOLERANCE
from app.panel.values import Band, Panel, Zone


@dataclass(frozen=True, slots=True)
class Region:
    """Where one brickwork goes: its zone's mark ("field" for the field itself), size, bond name, origin and extent."""

    mark: str
    size: BrickSize
    bond: str
    origin: tuple[float, float]
    extent: BaseGeometry


def regions(panel: Panel, field: BaseGeometry, sizes: dict[str, BrickSize]) -> list[Region]:
    """Divide `field` (inches, face frame) among the field's brickwork and the zones; later zones win.

    Every region but an empty one appears, the field first. A unit owns the joint to its right and above it, so each
    region gives up one of its own joints on its left and lower neighbours' behalf: exactly one joint stands between.
    """
    field_size = sizes[panel.field.size]
    field_origin = _corner(panel.field.origin, field)
    shares: list[tuple[str, BrickSize, str, tuple[float, float], BaseGeometry]] = []
    rest = field
    for zone in reversed(panel.zones):
        wanted = zone_extent(zone, field_origin[1], field_size.gauge, field)
        share = rest.intersection(wanted)
        rest = rest.difference(wanted)
        shares.append((zone.mark, sizes[zone.work.size], zone.work.bond, _corner(zone.work.origin, share), share))
    shares.append(("field", field_size, panel.field.bond, field_origin, rest))
    shares = [share for share in reversed(shares) if share[4].area > TOLERANCE]
    return [Region(*share[:4], _less_joints(k, shares)) for k, share in enumerate(shares)]


def zone_extent(zone: Zone, field_y: float, gauge: float, field: BaseGeometry) -> BaseGeometry:
    """The zone as drawn, inches; a band takes whole courses of the field over the whole width."""
    match zone.region:
        case Band(course=course, courses=courses):
            x0, _, x1, _ = field.bounds
            return shapely.box(x0, field_y + course * gauge, x1, field_y + (course + courses) * gauge)
        case shape:
            return shape_polygon(shape)


def _corner(origin: object, extent: BaseGeometry) -> tuple[float, float]:
    if isinstance(origin, tuple):
        return origin[0].inches, origin[1].inches
    if extent.is_empty:
        return 0.0, 0.0
    return float(extent.bounds[0]), float(extent.bounds[1])


def _less_joints(k: int, shares: list[tuple[str, BrickSize, str, tuple[float, float], BaseGeometry]]) -> BaseGeometry:
    size, extent = shares[k][1], shares[k][4]
    others = [share[4] for n, share in enumerate(shares) if n != k]
    if not others:
        return extent
    head, bed = joints(BONDS[shares[k][2]], size)
    return extent.difference(shapely.union_all([swept(other, -head, -bed) for other in others]))


def swept(shape: BaseGeometry, dx: float, dy: float) -> BaseGeometry:
    """All points of the shape moved by any part of dx across and any part of dy up, inches."""
    return _swept_along(_swept_along(shape, dx, 0.0), 0.0, dy)


def _swept_along(shape: BaseGeometry, dx: float, dy: float) -> BaseGeometry:
    parts = [shape, shapely.transform(shape, lambda points: points + np.array([dx, dy]))]
    for ring in shapely.get_rings(shapely.get_parts(shape)):
        points = shapely.get_coordinates(ring)
        for (ax, ay), (bx, by) in pairwise(points):
            if abs((bx - ax) * dy - (by - ay) * dx) > TOLERANCE * TOLERANCE:
                parts.append(shapely.Polygon([(ax, ay), (bx, by), (bx + dx, by + dy), (ax + dx, ay + dy)]))
    return shapely.union_all(parts)
