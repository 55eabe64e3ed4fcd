"""The sheet plan: which sheets are laid on a panel, in which order, and what is left of each. See `sheet_plan`."""

from collections.abc import Iterator
from math import ceil

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from app.brickwork.lattice import Floats
from app.brickwork.layout import Layout
from app.brickwork.regions import Region
from app.liner.covers import covers
from app.liner.cuts import Ring
from app.liner.mould import Mould, mould
from app.liner.places import Places, outlines, sheet_places, starts
from app.liner.values import CORNERS, LAP, STARTING_CORNER, Sheet, SheetPlan, SheetType
from app.panel.project import Liner
from app.panel.tolerance import TOLERANCE

Shapes = NDArray[np.object_]

_SLANTED_GRID = 1e-9
"""Inches; slanted teeth are clipped on this grid, as nearly equal slants can fail in floats. Level teeth are safe, and
three times faster without."""

Laid = tuple[Region, Mould, list[Sheet]]


def sheet_plan(layout: Layout, liner: Liner, corner: str = STARTING_CORNER) -> SheetPlan:
    """Lay sheets over every region of the face, row by row from the starting corner, the field first.

    A sheet lies where at least one piece of brick does, and its trim is what of it lies on the region's share of the
    brick field: the margin is plain concrete and gets none. Each sheet lies over the laps of the ones before it. No
    sheets for an empty layout. Raises ValueError for a corner that is not one of `CORNERS`.
    """
    if corner not in CORNERS:
        raise ValueError(f"starting corner {corner!r}: expected one of {', '.join(CORNERS)}")
    sheets: list[Sheet] = []
    laid: list[Laid] = []
    for zone, (region, cover) in enumerate(zip(layout.regions, covers(layout), strict=True)):
        shape = mould(region.bond, region.size, liner.columns, liner.rows)
        places = sheet_places(layout, zone, shape, corner)
        full = outlines(layout, zone, shape, places)
        laid.append((region, shape, list(_sheets(region.mark, cover, full, places, starts(corner), len(sheets)))))
        sheets += laid[-1][2]
    types = _types(laid)
    return SheetPlan(
        sheets=tuple(sheets),
        used=len(sheets),
        placed=len(sheets),
        area_bound=sum(kind.area_bound for kind in types),
        naive=len(sheets),
        corner=corner,
        lap=LAP,
        columns=liner.columns,
        rows=liner.rows,
        types=types,
        bare=max(0.0, layout.field.area - sum(sheet.area for sheet in sheets)),
    )


def _sheets(
    mark: str, cover: BaseGeometry, full: Floats, places: Places, away: tuple[int, int], before: int
) -> Iterator[Sheet]:
    """The sheets of one region, numbered on from `before`."""
    is_slanted = bool(np.abs(np.diff(full[:1], axis=1)).min(axis=2).max(initial=0.0) > TOLERANCE)
    trims, is_trimmed = _trims(cover, full, is_slanted)
    left = iter(_rings(trims[is_trimmed]))
    rows = zip(
        places.column.tolist(), places.row.tolist(), is_trimmed.tolist(), shapely.area(trims).tolist(), strict=True
    )
    for k, ((column, row, trimmed, area), outline) in enumerate(zip(rows, _as_rings(full), strict=True)):
        trim, holes = next(left) if trimmed else ((outline,), ())
        yield Sheet(
            number=before + k + 1,
            mark=str(before + k + 1),
            region=mark,
            column=column,
            row=row,
            is_trimmed=trimmed,
            outline=outline,
            trim=trim,
            holes=holes,
            area=area,
            away=away,
        )


def _trims(cover: BaseGeometry, full: Floats, is_slanted: bool) -> tuple[Shapes, NDArray[np.bool_]]:
    """What of each full sheet lies on the cover, and whether that is less than the full sheet."""
    trims: Shapes = shapely.polygons(full) if len(full) else np.zeros(0, dtype=np.object_)
    shapely.prepare(cover)
    doubtful = np.flatnonzero(~shapely.covers(cover, trims))
    left = _areas_only(shapely.intersection(cover, trims[doubtful], grid_size=_SLANTED_GRID if is_slanted else None))
    is_less = shapely.area(left) < shapely.area(trims[doubtful]) - TOLERANCE
    trims[doubtful[is_less]] = left[is_less]
    is_trimmed = np.zeros(len(trims), dtype=np.bool_)
    is_trimmed[doubtful[is_less]] = True
    return trims, is_trimmed


def _areas_only(shapes: Shapes) -> Shapes:
    """The shapes without points, lines, and shreds of no area."""
    mixed = np.flatnonzero(shapely.get_type_id(shapes) != shapely.GeometryType.POLYGON)
    for k in mixed.tolist():
        parts = shapely.get_parts(shapely.get_parts(shapes[k]))
        shapes[k] = shapely.multipolygons(parts[shapely.area(parts) > TOLERANCE])
    return shapes


def _rings(trims: Shapes) -> list[tuple[tuple[Ring, ...], tuple[Ring, ...]]]:
    """Outer rings and holes of each trim."""
    parts, owner = shapely.get_parts(trims, return_index=True)
    rings, part = shapely.get_rings(parts, return_index=True)
    points, ring = shapely.get_coordinates(rings, return_index=True)
    corners = list(map(tuple, points.tolist()))
    ends = np.searchsorted(ring, np.arange(len(rings) + 1)).tolist()
    found: list[tuple[list[Ring], list[Ring]]] = [([], []) for _ in range(len(trims))]
    is_hole = np.diff(part, prepend=-1) == 0
    for k, (trim, hole) in enumerate(zip(owner[part].tolist(), is_hole.tolist(), strict=True)):
        found[trim][hole].append(tuple(corners[ends[k] : ends[k + 1] - 1]))
    return [(tuple(outer), tuple(holes)) for outer, holes in found]


def _as_rings(full: Floats) -> list[Ring]:
    return [tuple(map(tuple, ring)) for ring in full.tolist()]


def _types(laid: list[Laid]) -> tuple[SheetType, ...]:
    """One type for each size and bond, its sheets counted over all regions."""
    grouped: dict[tuple[str, str], list[Laid]] = {}
    for region, shape, sheets in laid:
        grouped.setdefault((region.size.name, region.bond), []).append((region, shape, sheets))
    return tuple(_type(size, bond, same) for (size, bond), same in grouped.items())


def _type(size: str, bond: str, same: list[Laid]) -> SheetType:
    shape = same[0][1]
    covered = sum(sheet.area for _, _, sheets in same for sheet in sheets)
    return SheetType(
        size=size,
        bond=bond,
        repeats=shape.repeats,
        width=shape.size[0],
        height=shape.size[1],
        area=shape.area,
        used=sum(len(sheets) for _, _, sheets in same),
        area_bound=ceil(covered / shape.area - TOLERANCE),
    )
