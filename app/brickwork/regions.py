"""The parts of the brick field, one for the field's own brickwork and one a zone, a joint kept between them."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from itertools import pairwise

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from app.brickwork.bond import Bond, joints
from app.brickwork.fit_grids import has_plain_courses
from app.brickwork.stretch import IDENTITY, Stretch
from app.panel.geometry import shape_polygon
from app.panel.shapes import Point
from app.panel.size import BrickSize
from app.panel.tolerance import TOLERANCE
from app.panel.values import Band, Panel, Zone


@dataclass(frozen=True, slots=True)
class Region:
    """Where one brickwork goes: its zone's mark ("field" for the field itself), size, bond, origin and extent.

    `across` and `up` are where its lines really stand, once joints have given; `squeeze` is how much narrower its
    narrowest head and bed joint are for it, inches, 0 or less.
    """

    mark: str
    size: BrickSize
    bond: Bond
    origin: tuple[float, float]
    extent: BaseGeometry
    across: Stretch = IDENTITY
    up: Stretch = IDENTITY
    squeeze: tuple[float, float] = (0.0, 0.0)

    @property
    def joints(self) -> tuple[float, float]:
        """The narrowest joints beside and above a unit, inches."""
        head, bed = joints(self.bond, self.size)
        return head + self.squeeze[0], bed + self.squeeze[1]


@dataclass(frozen=True, slots=True)
class Lines:
    """The field's own lines: origin of its bond, and where its lines across and up really stand; inches."""

    origin: tuple[float, float]
    across: Stretch = IDENTITY
    up: Stretch = IDENTITY


def regions(
    panel: Panel, field: BaseGeometry, lines: Lines, sizes: Mapping[str, BrickSize], bonds: Mapping[str, Bond]
) -> list[Region]:
    """Divide `field` (inches, face frame) among the field's brickwork and the zones; later zones win.

    Every region but an empty one appears, the field first. A unit owns the joint to its right and above it, so each
    region gives up one of its own joints on its left and lower neighbours' behalf: exactly one joint stands between.
    """
    shares = _shares(panel, field, lines, sizes, bonds)
    if len(shares) == 1:
        return shares
    extents = [share.extent.difference(_joints_beside(k, shares)) for k, share in enumerate(shares)]
    extents = [extent.difference(_joints_across(k, shares, extents)) for k, extent in enumerate(extents)]
    kept = [(share, extent) for share, extent in zip(shares, extents, strict=True) if extent.area > TOLERANCE]
    return [replace(share, extent=extent) for share, extent in kept]


def _shares(
    panel: Panel, field: BaseGeometry, lines: Lines, sizes: Mapping[str, BrickSize], bonds: Mapping[str, Bond]
) -> list[Region]:
    """The regions before joints are given up."""
    size = sizes[panel.field.size]
    rest, zones = field, []
    for zone in reversed(panel.zones):
        wanted = zone_extent(zone, lines, size.gauge, field)
        share, rest = rest.intersection(wanted), rest.difference(wanted)
        work = zone.work
        region = Region(zone.mark, sizes[work.size], bonds[work.bond], corner(work.origin, share), share)
        zones.append(_in_band(region, zone, lines, size.gauge))
    squeeze = _squeeze(lines.across, size.head_module), _squeeze(lines.up, size.gauge)
    own = Region("field", size, bonds[panel.field.bond], lines.origin, rest, lines.across, lines.up, squeeze)
    return [share for share in (own, *reversed(zones)) if share.extent.area > TOLERANCE]


def _squeeze(stretch: Stretch, module: float) -> float:
    """How much narrower the narrowest joint is than nominally, of cells that are one `module`; inches, 0 or less."""
    if len(stretch.nominal_knots) < 2:
        return 0.0
    slope = float((np.diff(stretch.real_knots) / np.diff(stretch.nominal_knots)).min())
    return min(0.0, module * (slope - 1.0))


def _in_band(region: Region, zone: Zone, lines: Lines, gauge: float) -> Region:
    """A band where the field's bed joints have given: courses of the field's gauge follow the field's lines, and in
    any other bond the joint over its units takes what the band is lower than nominally."""
    band = zone.region
    if not isinstance(band, Band) or zone.work.origin is not None or lines.up.is_identity:
        return region
    low, high = (lines.origin[1] + k * gauge for k in (band.course, band.course + band.courses))
    if abs(region.size.gauge - gauge) <= TOLERANCE and has_plain_courses(region.bond, region.size):
        squeeze = 0.0, _squeeze(lines.up, gauge)
        return replace(region, origin=(region.origin[0], low), up=lines.up, squeeze=squeeze)
    given = lines.up.real(high) - lines.up.real(low) - (high - low)
    return replace(region, squeeze=(0.0, min(0.0, given)))


def zone_extent(zone: Zone, lines: Lines, gauge: float, field: BaseGeometry) -> BaseGeometry:
    """The zone as drawn, inches; a band takes whole courses of the field over its whole width, nothing of no field."""
    match zone.region:
        case Band() if field.is_empty:
            return shapely.Polygon()
        case Band(course=course, courses=courses):
            x0, _, x1, _ = field.bounds
            low, high = (lines.up.real(lines.origin[1] + k * gauge) for k in (course, course + courses))
            return shapely.box(x0, low, x1, high)
        case shape:
            return shape_polygon(shape)


def corner(origin: Point | None, extent: BaseGeometry) -> tuple[float, float]:
    """A typed origin in inches, else the lower-left corner of the extent; 0, 0 for an empty one."""
    if origin is not None:
        return origin[0].inches, origin[1].inches
    if extent.is_empty:
        return 0.0, 0.0
    return float(extent.bounds[0]), float(extent.bounds[1])


def _joints_beside(k: int, shares: list[Region]) -> BaseGeometry:
    """What region k gives up on its right and above, where others begin."""
    head, bed = shares[k].joints
    return shapely.union_all([swept(other.extent, -head, -bed) for n, other in enumerate(shares) if n != k])


def _joints_across(k: int, shares: list[Region], extents: list[BaseGeometry]) -> BaseGeometry:
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
