"""Where sheets lie over the flanges of those laid before them. See `laps`."""

from collections.abc import Container, Sequence
from dataclasses import dataclass

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from app.brickwork.lattice import Floats
from app.liner.cuts import Ring
from app.liner.trims import Shapes, polygons_in, shapes_of, sound, trim_shapes
from app.liner.values import Sheet, SheetPlan
from app.liner.work_values import Lap, Point
from app.panel.tolerance import TOLERANCE

_TICKS, _OFF_TIE = 1 / TOLERANCE, 0.137
"""Corners of neighbours are brought to the tolerance, so that they are the same; a little is added before, as lines at
whole 1/64 in. or thirds then lie far from where rounding turns."""

_LEAST_SEAM = 0.01
"""Inches; trims that touch over less than this touch in a corner."""


@dataclass(frozen=True, slots=True)
class _Strip:
    """A lap relative to a corner of the sheet below; no rings where the two only touch in a corner."""

    rings: tuple[Floats, ...] = ()
    area: float = 0.0
    middle: Point = (0.0, 0.0)
    seam: tuple[Floats, ...] = ()


_Rings = tuple[list[Floats], list[Floats]]
"""Rings of two neighbouring trims, relative to a corner of the first."""


def laps(plan: SheetPlan, under: Container[int] | None = None) -> tuple[Lap, ...]:
    """Every strip in which one trim lies over the flange of another, by the later sheet, then the earlier.

    With `under` only those on flanges of these sheets.

    A flange runs along the two far edges of a sheet, `plan.lap` wide and square at its ends; where an edge is cut away
    there is none. Sheets of different regions butt. Empty for no sheets, or liner without a lap.
    """
    if not plan.sheets or plan.lap <= 0:
        return ()
    pairs = [(plan.sheets[k], plan.sheets[n]) for k, n in _touching(plan.sheets)]
    pairs = [pair for pair in pairs if under is None or pair[0].number in under]
    alike: dict[object, int] = {}
    different: list[tuple[Sheet, Sheet, _Rings]] = []
    kinds = []
    for over, by in pairs:
        rings = _relative(over, over), _relative(by, over)
        kind = alike.setdefault(_key(rings), len(different))
        if kind == len(different):
            different.append((over, by, rings))
        kinds.append(kind)
    strips = _strips(different, plan.lap)
    found = zip(pairs, (strips[kind] for kind in kinds), strict=True)
    return tuple(_lap(over, by, strip) for (over, by), strip in found if strip.rings)


def _touching(sheets: Sequence[Sheet]) -> list[tuple[int, int]]:
    """Indices of trims of one region that touch, the earlier and the later; in order of the later."""
    shapes = trim_shapes(sheets)
    one, two = shapely.STRtree(shapes).query(shapes, predicate="dwithin", distance=TOLERANCE)
    pairs = sorted(zip(two[one < two].tolist(), one[one < two].tolist(), strict=True))
    return [(k, n) for n, k in pairs if sheets[k].region == sheets[n].region]


def _relative(sheet: Sheet, to: Sheet) -> list[Floats]:
    corner = np.array(to.outline[0])
    return [np.rint((np.array(ring) - corner) * _TICKS + _OFF_TIE) / _TICKS for ring in (*sheet.trim, *sheet.holes)]


def _key(rings: _Rings) -> object:
    """Most pairs of neighbours are like another pair, moved: their rings relative to one corner are the same."""
    return tuple(tuple(ring.tobytes() for ring in some) for some in rings)


def _strips(pairs: Sequence[tuple[Sheet, Sheet, _Rings]], width: float) -> list[_Strip]:
    """For each pair the part of the later trim within a flange's width of the edge it shares with the earlier one."""
    over = sound(shapes_of([rings[0] for _, _, rings in pairs], [len(sheet.holes) > 0 for sheet, _, _ in pairs]))
    by = sound(shapes_of([rings[1] for _, _, rings in pairs], [len(sheet.holes) > 0 for _, sheet, _ in pairs]))
    slanted = np.array([any(map(_is_slanted, (*one, *two))) for _, _, (one, two) in pairs], dtype=np.bool_)
    strips = [_Strip()] * len(pairs)
    for some, grid in ((np.flatnonzero(~slanted), None), (np.flatnonzero(slanted), TOLERANCE)):
        seams = _seams(over[some], by[some], grid)
        bands = shapely.buffer(seams, width, cap_style="flat", join_style="mitre")
        parts = shapely.intersection(bands, by[some], grid_size=grid)
        for k, seam, part in zip(some.tolist(), seams, parts, strict=True):
            strips[k] = _strip(seam, part)
    return strips


def _seams(over: Shapes, by: Shapes, grid: float | None) -> Shapes:
    """The edges that trims share, in runs as long as may be; empty where they only touch in a corner."""
    shared = shapely.intersection(shapely.boundary(over), shapely.boundary(by), grid_size=grid)
    parts, owner = shapely.get_parts(shared, return_index=True)
    is_line = shapely.length(parts) > 0
    seams = np.full(len(over), shapely.MultiLineString(), dtype=np.object_)
    found, index = np.unique(owner[is_line], return_inverse=True)
    seams[found] = shapely.line_merge(shapely.multilinestrings(parts[is_line], indices=index))
    seams[shapely.length(seams) <= _LEAST_SEAM] = shapely.MultiLineString()
    return seams


def _strip(seam: BaseGeometry, shape: BaseGeometry) -> _Strip:
    parts = polygons_in(shape)
    if not parts:
        return _Strip()
    middle = shapely.point_on_surface(max(parts, key=lambda part: part.area))
    rings = tuple(shapely.get_coordinates(part.exterior)[:-1] for part in parts)
    runs = tuple(shapely.get_coordinates(run) for run in shapely.get_parts(seam))
    return _Strip(rings, sum(part.area for part in parts), (middle.x, middle.y), runs)


def _is_slanted(ring: Floats) -> bool:
    """Whether a side runs neither level nor upright: nearly equal slants can fail in floats, all others are equal."""
    return bool(np.abs(ring - np.concatenate([ring[1:], ring[:1]])).min(axis=1).max() > 0)


def _lap(over: Sheet, by: Sheet, strip: _Strip) -> Lap:
    x, y = over.outline[0]
    return Lap(
        over=over.number,
        by=by.number,
        edge="along" if over.row == by.row else "up",
        rings=_moved(strip.rings, x, y),
        area=strip.area,
        middle=(x + strip.middle[0], y + strip.middle[1]),
        seam=_moved(strip.seam, x, y),
    )


def _moved(lines: tuple[Floats, ...], x: float, y: float) -> tuple[Ring, ...]:
    return tuple(tuple((x + dx, y + dy) for dx, dy in line.tolist()) for line in lines)
