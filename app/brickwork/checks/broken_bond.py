"""Courses that end at a jamb in neither the bond's own pieces nor a half or three-quarter bat.

At a jamb use a half and a three-quarter (Masonry Construction magazine, *Bricking around openings*).
"""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from app.brickwork.borders import borders
from app.brickwork.course_ends import CourseEnds, Ends
from app.brickwork.findings import Finding
from app.brickwork.fit import Limits
from app.brickwork.lattice import Floats, Ints
from app.brickwork.layout import Layout
from app.brickwork.pieces import bounds
from app.brickwork.regions import Region
from app.lengths import format_length
from app.panel.tolerance import TOLERANCE

_SAWN = 1 / 16
"""Inches that a saw holds (common practice)."""


@dataclass(frozen=True, slots=True)
class _Edge:
    name: str
    at: float
    starts: bool
    low: float
    high: float


def check(layout: Layout, unit: str) -> Iterator[Finding]:
    """One finding an upright edge: bad end pieces of closers, or else joints too wide where slivers were left out.

    Nothing in turned bonds, where no course ends squarely. Lengths in words in `unit`.
    """
    if not (layout.panel.fit.closers or len(layout.left_out.unit)):
        return
    ends = CourseEnds(layout)
    for edge in _edges(layout):
        found = ends.at(edge.at, edge.starts, edge.low, edge.high)
        if len(found.unit):
            own = _own(layout, found.unit, edge)
            yield from _odd_pieces(layout, found.unit, own, edge, unit) or _wide_joints(layout, found, edge, unit)


def _edges(layout: Layout) -> Iterator[_Edge]:
    """The upright edges at which a bond can be broken: all with closers, else those that left slivers."""
    uprights = borders(layout).uprights
    met = set(uprights.names if layout.panel.fit.closers else uprights.met(bounds(layout.left_out), 0))
    columns = (uprights.at, uprights.starts, uprights.low, uprights.high)
    for name, at, starts, low, high in zip(uprights.names, *(column.tolist() for column in columns), strict=True):
        if name in met:
            yield _Edge(name, at, starts, low, high)


def _own(layout: Layout, unit: Ints, edge: _Edge) -> Floats:
    """How long the bond's own piece is that each course ends with, inches: what the edge leaves of the whole unit, and
    the edge across a pier that is narrower."""
    units, own = layout.units, np.zeros(len(unit))
    across = _across(layout, unit, edge)
    for zone in np.unique(units.zone[unit]).tolist():
        here = units.zone[unit] == zone
        left, width = _whole(layout, unit[here], layout.regions[zone])
        low, high = np.maximum(left, np.minimum(edge.at, across[here])), np.maximum(edge.at, across[here])
        own[here] = np.minimum(left + width, high) - low
    return own


def _across(layout: Layout, unit: Ints, edge: _Edge) -> Floats:
    """Where the nearest edge that faces this one over the whole height of each unit is; infinitely far for none."""
    uprights, foot = borders(layout).uprights, layout.units.y[unit][:, None]
    top = foot + layout.units.height[unit][:, None]
    out = 1.0 if edge.starts else -1.0
    away = (uprights.at - edge.at) * out
    facing = (uprights.starts != edge.starts) & (away > TOLERANCE)
    beside = (uprights.low <= foot + TOLERANCE) & (uprights.high >= top - TOLERANCE) & facing
    nearest = np.where(beside, away, np.inf).min(axis=1, initial=np.inf)
    across: Floats = edge.at + out * nearest
    return across


def _whole(layout: Layout, unit: Ints, region: Region) -> tuple[Floats, Floats]:
    """Left end and width of whole units, inches, where their region's lines really stand."""
    units, bond, size = layout.units, region.bond, region.size
    cell, across, up = units.cell[unit], bond.across[0].inches(size), bond.up[0].inches(size)
    start = np.array([each.x.inches(size) for each in bond.cells])[cell]
    width = np.array([each.face(size)[0] for each in bond.cells])[cell]
    nominal = region.origin[0] + start + units.i[unit] * across + units.j[unit] * up
    return region.across.real(nominal), width


def _bats(layout: Layout, unit: Ints) -> Floats:
    """Half and three-quarter bat of each unit's brick, shape (units, 2), inches."""
    sizes = [region.size for region in layout.regions]
    bats = np.array([(size.half_bat, 0.75 * size.head_module - size.head_joint.inches) for size in sizes])
    chosen: Floats = bats[layout.units.zone[unit]]
    return chosen


def _odd_pieces(layout: Layout, unit: Ints, own: Floats, edge: _Edge, text_unit: str) -> list[Finding]:
    units = layout.units
    width = units.width[unit]
    fits = np.abs(_bats(layout, unit) - width[:, None]).min(axis=1) <= _SAWN
    odd = np.flatnonzero((np.abs(width - own) > _SAWN) & ~fits)
    if not len(odd):
        return []
    first = int(odd[0])
    text = (
        f"Bond broken at {edge.name}: {len(odd)} of {len(unit)} courses end in a piece of"
        f" {format_length(float(width[first]), text_unit)} where the bond's own is"
        f" {format_length(float(own[first]), text_unit)}; move the edge or the bond's origin until a half and a"
        " three-quarter fit."
    )
    return [_finding(layout, int(unit[first]), edge, text)]


def _wide_joints(layout: Layout, ends: Ends, edge: _Edge, text_unit: str) -> list[Finding]:
    joints = np.array([region.size.head_joint.inches for region in layout.regions])[layout.units.zone[ends.unit]]
    wide = np.flatnonzero(ends.gap > joints * Limits(0.0).most + TOLERANCE)
    if not len(wide):
        return []
    first = int(wide[0])
    text = (
        f"Bond broken at {edge.name}: {len(wide)} of {len(ends.unit)} courses stop"
        f" {format_length(float(ends.gap[first]), text_unit)} short, as a piece thinner than"
        f" {format_length(layout.smallest_cut, text_unit)} is left out; move the edge or the bond's origin."
    )
    return [_finding(layout, int(ends.unit[first]), edge, text)]


def _finding(layout: Layout, unit: int, edge: _Edge, text: str) -> Finding:
    middle = float(layout.units.y[unit] + layout.units.height[unit] / 2)
    return Finding("broken-bond", "warning", edge.at, middle, text, edge.name)
