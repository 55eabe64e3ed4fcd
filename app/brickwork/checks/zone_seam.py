"""A zone whose lower or upper edge no course meets, so that a course is ripped along the seam.

A soldier band of modular brick is 8 in., three courses, and leaves the gauge above undisturbed; one rowlock course of
4 in. does not (faces per US Navy manual 14069, fig. 7-53).
"""

from collections.abc import Iterator
from dataclasses import dataclass
from math import floor

from app.brickwork.findings import Finding
from app.brickwork.fit_grids import course_grid
from app.brickwork.fit_lines import Grid1
from app.brickwork.layout import Layout
from app.brickwork.regions import Region, zone_extent
from app.brickwork.stretch import Stretch
from app.lengths import format_length
from app.panel.shapes import Polygon
from app.panel.tolerance import TOLERANCE
from app.panel.values import Zone


@dataclass(frozen=True, slots=True)
class _Seam:
    """A level seam: its edge of the zone, the middle of it, and where brick `starts` above or else stops below it."""

    edge: str
    x: float
    y: float
    starts: bool
    of_field: bool


def check(layout: Layout, unit: str) -> Iterator[Finding]:
    """One finding a level edge of a zone that rips the field's courses beside it, or the zone's own; lengths in `unit`.

    Nothing where neither bond has courses of one height, nor at edges of a zone that face no other brick.
    """
    if not layout.panel.zones:
        return
    field = _region(layout, "field")
    for zone in layout.panel.zones:
        own = _region(layout, zone.mark)
        if own is not None:
            yield from _at_edges(layout, zone, own, field, unit)


def _region(layout: Layout, mark: str) -> Region | None:
    return next((region for region in layout.regions if region.mark == mark), None)


def _at_edges(layout: Layout, zone: Zone, own: Region, field: Region | None, unit: str) -> Iterator[Finding]:
    told: set[str] = set()
    for seam in _seams(layout, zone, own):
        region = field if seam.of_field else own
        rip = _rip(region, seam) if region is not None and seam.edge not in told else None
        if rip is not None:
            told.add(seam.edge)
            yield _finding(zone, seam, rip, unit)


def _seams(layout: Layout, zone: Zone, own: Region) -> Iterator[_Seam]:
    """Both sides of the lower and the upper edge, where there is brick beyond."""
    extent = zone_extent(zone, layout.lines, layout.size.gauge, layout.field)
    (x0, low, x1, high), field, bed = extent.bounds, layout.field.bounds, layout.regions[0].joints[1]
    x = (max(x0, field[0]) + min(x1, field[2])) / 2
    if field[1] + TOLERANCE < low and _is_level(zone, low):
        yield _Seam("lower edge", x, low - bed, False, True)
        yield _Seam("lower edge", x, low, True, False)
    if high < field[3] - TOLERANCE and _is_level(zone, high):
        yield _Seam("upper edge", x, high, True, True)
        yield _Seam("upper edge", x, high - own.joints[1], False, False)


def _is_level(zone: Zone, height: float) -> bool:
    """Whether the zone has a level edge at its lowest or highest, inches: two corners of a polygon are there."""
    if not isinstance(zone.region, Polygon):
        return True
    return sum(abs(y.inches - height) <= TOLERANCE for _, y in zone.region.points) > 1


def _rip(region: Region, seam: _Seam) -> tuple[float, float, float] | None:
    """Height of the piece that a seam makes of a unit, of the unit, and how far the nearest course line is, up
    positive; inches. None where no unit is cut, or courses are not all one height."""
    grid = course_grid(region.bond, region.size, region.origin)
    if not isinstance(grid, Grid1):
        return None
    up: Stretch = region.up
    course = floor((up.nominal(seam.y) - grid.origin + TOLERANCE) / grid.step)
    into = seam.y - up.real(grid.line(course))
    if into <= 2 * TOLERANCE or into >= grid.unit - 2 * TOLERANCE:
        return None
    target = 0.0 if seam.starts else grid.unit
    moves = (target - into, target - into + grid.step, target - into - grid.step)
    return (grid.unit - into if seam.starts else into), grid.unit, min(moves, key=abs)


def _finding(zone: Zone, seam: _Seam, rip: tuple[float, float, float], unit: str) -> Finding:
    piece, whole, move = rip
    whose = "the field" if seam.of_field else "the zone"
    by = format_length(abs(move), unit, 16 if abs(move) >= 1 / 16 else 64)
    text = (
        f"The {seam.edge} of zone {zone.mark} rips a course of {whose} to {format_length(piece, unit)} of"
        f" {format_length(whole, unit)}; {by} {'higher' if move > 0 else 'lower'} it would course."
    )
    return Finding("zone-seam", "warning", seam.x, seam.y, text, f"zone {zone.mark} {seam.edge}")
