"""Where the sheets of a region lie: whole steps of its lattice from the starting corner, by integers alone."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from app.brickwork.lattice import Floats, Ints
from app.brickwork.layout import Layout
from app.brickwork.regions import Region
from app.brickwork.turning import turned_points
from app.liner.laying_order import columns_first, later_steps
from app.liner.mould import Mould, mould
from app.panel.laying import DIRECTIONS, Laying
from app.panel.project import Liner
from app.panel.tolerance import TOLERANCE


@dataclass(frozen=True, slots=True)
class Places:
    """Sheets of one region in laying order; `column` and `row` count from the starting corner.

    `place` and `line` say where on the region's lattice a sheet's own 0, 0 lies.
    """

    column: Ints
    row: Ints
    place: Ints
    line: Ints


def starts(corner: str) -> tuple[int, int]:
    """Which way sheets follow on from the starting corner in the face frame: 1 right or up, -1 left or down."""
    return (-1 if corner.endswith("left") else 1), (1 if "lower" in corner else -1)


def sheet_places(layout: Layout, zone: int, liner: Liner, laying: Laying) -> Places:
    """Places of all sheets with at least one piece of brick of region `zone`; none for a region without brick.

    Rows follow one another, or columns do; each sheet comes after all those on whose flanges it lies.
    """
    region, away = layout.regions[zone], starts(laying.corner)
    places = _rows(layout, zone, mould(region.bond, region.size, liner.columns, liner.rows), *away)
    if laying.direction == DIRECTIONS[0]:
        return places
    later = later_steps(region.bond, region.size, liner.columns, liner.rows, away)
    order = columns_first(places.column, places.row, places.place, places.line, later)
    return Places(places.column[order], places.row[order], places.place[order], places.line[order])


def _rows(layout: Layout, zone: int, shape: Mould, right: int, up: int) -> Places:
    """Row by row; each starts as near to the region's edge as its lattice lets it, without a part sheet before it."""
    of_zone = layout.units.zone == zone
    place, line = shape.basis.lines(*_distinct(layout.units.i[of_zone], layout.units.j[of_zone]))
    if not len(line):
        return Places(line, line, line, line)
    along, lines = shape.repeats
    lowest = int(line.min()) if up > 0 else int(line.max()) - lines + 1
    row, course = np.divmod(line - lowest, lines)
    place = place - shape.first_place(course)
    edge = right * float((right * _x(shape, place, lowest + row * lines)).min())
    column = (place - _first(shape, lowest + row * lines, edge, right)) * right // along
    row, column = _distinct(row * up, column)
    line = lowest + row * up * lines
    first = _first(shape, line, edge, right)
    return Places(column, row, first + column * along if right > 0 else first - (column + 1) * along + 1, line)


def _distinct(one: NDArray[np.signedinteger], two: NDArray[np.signedinteger]) -> tuple[Ints, Ints]:
    """The different pairs, in order of `one`, then `two`: ticked off in a table, for both are steps of one lattice."""
    if not len(one):
        return one.astype(np.int64), two.astype(np.int64)
    start, low, wide = int(one.min()), int(two.min()), int(np.ptp(two)) + 1
    is_there = np.zeros((int(np.ptp(one)) + 1) * wide, dtype=np.bool_)
    is_there[(one.astype(np.int64) - start) * wide + (two - low)] = True
    row, column = np.divmod(np.flatnonzero(is_there), wide)
    return row + start, column + low


def _x(shape: Mould, place: Ints, line: Ints) -> Floats:
    x: Floats = place * shape.length + line * shape.step[0]
    return x


def _first(shape: Mould, line: Ints, edge: float, right: int) -> Ints:
    """The place nearest the starting edge, and not before it, on each line."""
    steps = right * (edge - line * shape.step[0]) / shape.length
    first: Ints = right * np.ceil(steps - TOLERANCE).astype(np.int64)
    return first


def outlines(layout: Layout, zone: int, shape: Mould, places: Places) -> Floats:
    """Full outline of each sheet, shape (sheets, corners, 2), face frame, inches."""
    origin = turned_points(np.array([layout.regions[zone].origin]), -shape.turn)
    at = origin + np.column_stack([_x(shape, places.place, places.line), places.line * shape.step[1]])
    rings = at[:, None, :] + shape.outline
    turned: Floats = turned_points(rings.reshape(-1, 2), shape.turn).reshape(rings.shape)
    return _where_joints_gave(layout.regions[zone], turned)


def _where_joints_gave(region: Region, rings: Floats) -> Floats:
    """The sheets as they lie once they were stretched or squeezed to the region's lines."""
    if region.across.is_identity and region.up.is_identity:
        return rings
    return np.stack([region.across.real(rings[..., 0]), region.up.real(rings[..., 1])], axis=-1)
