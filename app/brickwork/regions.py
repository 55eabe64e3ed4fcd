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


@dataclass(frozen=True, slots=True)
class _Share:
    """A region before joints are given up; `head` and `bed` are its bond's own joints, inches."""

    mark: str
    size: BrickSize
    bond: str
    origin: tuple[float, float]
    extent: BaseGeometry

    @property
    def joints(self) -> tuple[float, float]:
        return joints(BONDS[self.bond], self.size)


def regions(panel: Panel, field: BaseGeometry, sizes: dict[str, BrickSize]) -> list[Region]:
    """Divide `field` (inches, face frame) among the field's brickwork and the zones; later zones win.

    Every region but an empty one appears, the field first. A unit owns the joint to its right and above it, so each
    region gives up one of its own joints on its left and lower neighbours' behalf: exactly one joint stands between.
    """
    shares = _shares(panel, field, sizes)
    if len(shares) == 1:
        return [Region(share.mark, share.size, share.bond, share.origin, share.extent) for share in shares]
    extents = [share.extent.difference(_joints_beside(k, shares)) for k, share in enumerate(shares)]
    extents = [extent.difference(_joints_across(k, shares, extents)) for k, extent in enumerate(extents)]
    kept = [(share, extent) for share, extent in zip(shares, extents, strict=True) if extent.area > TOLERANCE]
    return [Region(share.mark, share.size, share.bond, share.origin, extent) for share, extent in kept]


def _shares(panel: Panel, field: BaseGeometry, sizes: dict[str, BrickSize]) -> list[_Share]:
    size, origin = sizes[panel.field.size], _corner(panel.field.origin, field)
    rest, zones = field, []
    for zone in reversed(panel.zones):
        wanted = zone_extent(zone, origin[1], size.gauge, field)
        share, rest = rest.intersection(wanted), rest.difference(wanted)
        zones.append(_Share(zone.mark, sizes[zone.work.size], zone.work.bond, _corner(zone.work.origin, share), share))
    shares = [_Share("field", size, panel.field.bond, origin, rest), *reversed(zones)]
    return [share for share in shares if share.extent.area > TOLERANCE]


def zone_extent(zone: Zone, field_y: float, gauge: float, field: BaseGeometry) -> BaseGeometry:
    """The zone as drawn, inches; a band takes whole courses of the field over its whole width, nothing of no field."""
    match zone.region:
        case Band() if field.is_empty:
            return shapely.Polygon()
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


def _joints_beside(k: int, shares: list[_Share]) -> BaseGeometry:
    """What region k gives up on its right and above, where others begin."""
    head, bed = shares[k].joints
    return shapely.union_all([swept(other.extent, -head, -bed) for n, other in enumerate(shares) if n != k])


def _joints_across(k: int, shares: list[_Share], extents: list[BaseGeometry]) -> BaseGeometry:
    """What region k still gives up where a seam ends in the open: there the lower right of two gives up the joint.

    A joint's width less the tolerance, so that an edge that already stands a joint away is not touched.
    """
    bed = TOLERANCE / 2 - shares[k].joints[1]
    others = [n for n, extent in enumerate(extents) if n != k and not extent.is_empty]
    return shapely.union_all([swept(extents[n], shares[n].joints[0] - TOLERANCE / 2, bed) for n in others])


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
