"""Which bricks hold loose sheets down until the others are placed. See `hold_downs`."""

from collections.abc import Iterator, Sequence

import numpy as np
import shapely

from app.brickwork.cuts import CUTS
from app.brickwork.lattice import Floats, Ints
from app.brickwork.layout import Layout
from app.liner.trims import trim_shapes
from app.liner.values import Sheet, SheetPlan
from app.liner.work_values import HoldDown, Lap

MOST = 6
"""Bricks to hold one sheet down: four corners and two laps; more would be laying brick."""

_SQUARE = tuple(CUTS.index(name) for name in ("length", "height"))


def hold_downs(layout: Layout, plan: SheetPlan, laps: Sequence[Lap]) -> tuple[HoldDown, ...]:
    """For each sheet the pieces of brick on it that are nearest its trim's corners, then the middles of its largest
    laps over others, at most `MOST`, each once.

    None for a sheet on which no piece has its middle, and for no sheets.
    """
    if not plan.sheets:
        return ()
    points, on = _on_each(layout, plan)
    wanted = {sheet.number: _corners(sheet) for sheet in plan.sheets}
    for lap in sorted(laps, key=lambda lap: -lap.area):
        wanted[lap.by].append(lap.middle)
    return tuple(
        _hold_down(sheet, wanted[sheet.number], points, own) for sheet, own in zip(plan.sheets, on, strict=True)
    )


def _hold_down(sheet: Sheet, wanted: list[tuple[float, float]], points: Floats, own: Ints) -> HoldDown:
    if not len(own):
        return HoldDown(sheet.number, (), ())
    away = points[own][None] - np.array(wanted)[:, None]
    nearest = own[np.hypot(away[..., 0], away[..., 1]).argmin(axis=1)].tolist()
    units = tuple(dict.fromkeys(nearest))[:MOST]
    return HoldDown(sheet.number, units, tuple((x, y) for x, y in points[list(units)].tolist()))


def _corners(sheet: Sheet) -> list[tuple[float, float]]:
    rings = np.array([point for ring in sheet.trim for point in ring])
    (left, low), (right, high) = rings.min(axis=0).tolist(), rings.max(axis=0).tolist()
    return [(left, low), (right, low), (right, high), (left, high)]


def _on_each(layout: Layout, plan: SheetPlan) -> tuple[Floats, Iterator[Ints]]:
    """A point on every piece of brick, and for each sheet the pieces whose point is on it."""
    points = _points(layout)
    sheet, unit = shapely.STRtree(shapely.points(points)).query(trim_shapes(plan.sheets), predicate="contains")
    order = np.argsort(sheet, kind="stable")
    ends = np.searchsorted(sheet[order], np.arange(1, len(plan.sheets)))
    return points, iter(np.split(unit[order], ends))


def _points(layout: Layout) -> Floats:
    """The middle of every piece, or a point on it where it is no upright rectangle."""
    units, trims = layout.units, layout.trims
    points = np.column_stack([units.x + units.width / 2, units.y + units.height / 2])
    turned = np.array([region.bond.turn != 0 for region in layout.regions])
    odd = np.flatnonzero(~np.isin(trims.cut, _SQUARE) | turned[units.zone[trims.unit]])
    if len(odd):
        rings = [trims.pieces.ring(piece) for piece in odd.tolist()]
        index = np.repeat(np.arange(len(rings)), [len(ring) for ring in rings])
        shapes = shapely.polygons(shapely.linearrings(np.concatenate(rings), indices=index))
        points[trims.unit[odd]] = shapely.get_coordinates(shapely.point_on_surface(shapes))
    return points
