"""Head joints over each other, or nearly, where the bond must break them: closers can line them up.

A lap of a quarter unit is the least that counts as breaking joints (common practice; the lap of Flemish bond is a
quarter unit: pocket guide of a US masonry institute, 2012).
"""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from app.brickwork.borders import Borders, borders
from app.brickwork.findings import Finding
from app.brickwork.laps import least_laps, own_least_lap
from app.brickwork.lattice import Flags, Floats, Ints
from app.brickwork.layout import Layout
from app.brickwork.regions import Region
from app.lengths import format_length

_GIVE = 1 / 16
"""Inches by which the lap of a motif may be short where joints give or a saw strays (common practice)."""


@dataclass(frozen=True, slots=True)
class _Places:
    """Joints that do not lap enough: where, and how far the nearest joint of the next course is, inches."""

    x: Floats
    y: Floats
    lap: Floats


def check(layout: Layout, unit: str) -> Iterator[Finding]:
    """One finding an edge beside which joints line up, at its lowest such joint, with the least lap; lengths in `unit`.

    Only where closers are laid: a bond's own lattice keeps its own laps. A bond that does not break joints by its own
    motif is left alone.
    """
    if not layout.panel.fit.closers:
        return
    for zone, region in enumerate(layout.regions):
        own = own_least_lap(region.bond, region.size)
        least = min(region.size.length.inches / 4, own - _GIVE)
        if own > _GIVE:
            yield from _grouped(_places(layout, zone, region, least), region, layout, unit, least)


def _places(layout: Layout, zone: int, region: Region, least: float) -> _Places:
    units = layout.units
    chosen = np.flatnonzero(units.zone == zone)
    row = _rows(layout, chosen, region)
    order = np.lexsort((units.x[chosen], row))
    chosen, row = chosen[order], row[order]
    start, end = units.x[chosen], units.x[chosen] + units.width[chosen]
    gap = start[1:] - end[:-1]
    is_joint = (np.diff(row) == 0) & (gap > 0) & (gap < 2 * region.size.head_joint.inches)
    at, y = (end[:-1] + gap / 2)[is_joint], units.y[chosen][:-1][is_joint]
    lap = least_laps(row[:-1][is_joint], at)
    short = np.abs(lap) < least
    return _Places(at[short], y[short], np.abs(lap[short]))


def _rows(layout: Layout, chosen: Ints, region: Region) -> Floats:
    """Which course of equal height each unit stands in, as a whole number."""
    units, cells = layout.units, region.bond.cells
    height, up = cells[0].height.inches(region.size), region.bond.up[1].inches(region.size)
    foot = np.array([cell.y.inches(region.size) for cell in cells])[units.cell[chosen]] + units.j[chosen] * up
    rows: Floats = np.round((foot - cells[0].y.inches(region.size)) / height)
    return rows


def _grouped(places: _Places, region: Region, layout: Layout, unit: str, least: float) -> Iterator[Finding]:
    """Joints beside one edge as one finding, and those of a region that are beside none, as at a slanted edge."""
    far = "away from upright edges" + ("" if region.mark == "field" else f" in zone {region.mark}")
    names = np.array(_beside(borders(layout).uprights, places, 2 * region.size.head_module, far), dtype=object)
    for name in dict.fromkeys(names.tolist()):
        here: Flags = names == name
        low = int(np.flatnonzero(here)[places.y[here].argmin()])
        where = name if name == far else f"at {name}"
        text = (
            f"Head joints line up {where} in {np.count_nonzero(here)} places: the least lap is"
            f" {format_length(float(places.lap[here].min()), unit)}, {format_length(least, unit)} breaks joints; move"
            " the edge or the bond's origin, or lay it without closers."
        )
        yield Finding("lap", "warning", float(places.x[low]), float(places.y[low]), text, name)


def _beside(uprights: Borders, places: _Places, reach: float, otherwise: str) -> list[str]:
    """Name of the nearest edge within reach of each joint, or else as given."""
    if not len(places.x) or not uprights.names:
        return [otherwise] * len(places.x)
    x, y = places.x[:, None], places.y[:, None]
    beside = (y > uprights.low - reach) & (y < uprights.high + reach) & (uprights.starts == (x > uprights.at))
    away = np.where(beside, np.abs(x - uprights.at), np.inf)
    nearest = zip(away.argmin(1).tolist(), away.min(1).tolist(), strict=True)
    return [uprights.names[k] if far <= reach else otherwise for k, far in nearest]
