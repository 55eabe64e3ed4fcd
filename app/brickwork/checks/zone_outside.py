"""A zone that sticks out of the face: drawn past the panel's outline, so part of it has no brick."""

from collections.abc import Iterator

import shapely
from shapely.geometry.base import BaseGeometry

from app.brickwork.findings import Finding
from app.brickwork.layout import Layout
from app.brickwork.regions import zone_extent
from app.panel.geometry import outline_polygon
from app.panel.values import Band

_SQUARE_INCHES_PER_SQUARE_FOOT = 144.0
_SQUARE_INCHES_PER_SQUARE_METRE = (1000 / 25.4) ** 2

LEAST_AREA = 1e-3
"""Square inches: less than this outside is float round-off along a slanted edge."""


def check(layout: Layout, unit: str) -> Iterator[Finding]:
    """One finding a zone partly outside, at a place of it that is outside; areas in sq ft, or m2 for `unit` "mm".

    A band is as wide as the brick field by rule, so only what stands over or under the face counts. One wholly outside
    is an empty zone.
    """
    if not layout.panel.zones or layout.field.is_empty:
        return
    face = outline_polygon(layout.panel)
    for zone in layout.panel.zones:
        wanted = zone_extent(zone, layout.lines, layout.size.gauge, layout.field)
        outside = wanted.difference(_room(layout, face) if isinstance(zone.region, Band) else face)
        if LEAST_AREA < outside.area < wanted.area - LEAST_AREA:
            yield _finding(zone.mark, outside, wanted.area, unit)


def _room(layout: Layout, face: BaseGeometry) -> BaseGeometry:
    """The face's height with the bed joint over its topmost course, which a band counts as its own."""
    x0, y0, x1, y1 = face.bounds
    return shapely.box(x0, y0, x1, y1 + layout.regions[0].joints[1])


def _finding(mark: str, outside: BaseGeometry, whole: float, unit: str) -> Finding:
    place = outside.representative_point()
    text = (
        f"Zone {mark} stands outside the face with {_area(outside.area, unit)} of its {_area(whole, unit)}; draw it"
        " within the outline."
    )
    return Finding("zone-outside", "warning", float(place.x), float(place.y), text, f"zone {mark}")


def _area(inches: float, unit: str) -> str:
    if unit == "mm":
        return f"{inches / _SQUARE_INCHES_PER_SQUARE_METRE:.3f} m2"
    return f"{inches / _SQUARE_INCHES_PER_SQUARE_FOOT:.2f} sq ft"
