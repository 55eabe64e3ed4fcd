"""Where sheets lie over the flanges of those laid before them. See `laps`."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
import shapely

from app.brickwork.lattice import Floats
from app.liner.cuts import Ring
from app.liner.trims import in_odd_rings, polygons_in, rings_of, trim_shapes
from app.liner.values import Sheet, SheetPlan
from app.liner.work_values import Lap, Point
from app.panel.keyed import Keyed
from app.panel.tolerance import TOLERANCE

_TICKS, _OFF_TIE = 1 / TOLERANCE, 0.137
"""Corners of neighbours are brought to the tolerance, so that they are the same; a little is added before, as lines at
whole 1/64 in. or thirds then lie far from where rounding turns."""

_LEAST_SEAM = 0.01
"""Inches; trims that touch over less than this touch in a corner."""


@dataclass(frozen=True, slots=True)
class CutOutline:
    """A trim with what is left of its own flange under its neighbours: rings, holes, square inches."""

    rings: tuple[Ring, ...]
    holes: tuple[Ring, ...]
    area: float


@dataclass(frozen=True, slots=True)
class _Pair:
    """Rings of two neighbouring trims, relative to a corner of the first, and the width of its flange."""

    over: list[Floats]
    by: list[Floats]
    width: float


@dataclass(frozen=True, slots=True)
class _Strip:
    """A lap relative to a corner of the sheet below; no rings where the two only touch in a corner."""

    rings: tuple[Floats, ...]
    area: float
    middle: Point


def laps(plan: SheetPlan) -> tuple[Lap, ...]:
    """Every strip in which one trim lies over the flange of another, by the later sheet, then the earlier.

    A flange runs along the two far edges of a sheet, `plan.lap` wide and square at its ends; where an edge is cut away
    there is none. Sheets of different regions butt. Empty for no sheets, or liner without a lap.
    """
    if not plan.sheets or plan.lap <= 0:
        return ()
    sheets, found = plan.sheets, []
    for first, second in _touching(sheets):
        over, by = sheets[first], sheets[second]
        strip = _strip(_keyed(over, by, plan.lap))
        if strip.rings:
            found.append(_lap(over, by, strip))
    return tuple(found)


def _touching(sheets: Sequence[Sheet]) -> list[tuple[int, int]]:
    """Indices of trims of one region that touch, the earlier and the later; in order of the later."""
    shapes = trim_shapes(sheets)
    one, two = shapely.STRtree(shapes).query(shapes, predicate="dwithin", distance=TOLERANCE)
    pairs = sorted(zip(two[one < two].tolist(), one[one < two].tolist(), strict=True))
    return [(k, n) for n, k in pairs if sheets[k].region == sheets[n].region]


def _keyed(over: Sheet, by: Sheet, width: float) -> Keyed[_Pair]:
    """Most pairs of neighbours are like another pair, moved: their rings relative to one corner are the same."""
    corner = np.array(over.outline[0])
    rings = [_relative(sheet, corner) for sheet in (over, by)]
    key = (tuple(ring.tobytes() for ring in some) for some in rings)
    return Keyed((*key, width), _Pair(rings[0], rings[1], width))


def _relative(sheet: Sheet, corner: Floats) -> list[Floats]:
    return [np.rint((np.array(ring) - corner) * _TICKS + _OFF_TIE) / _TICKS for ring in (*sheet.trim, *sheet.holes)]


@lru_cache(maxsize=8192)
def _strip(pair: Keyed[_Pair]) -> _Strip:
    """The part of the later trim within a flange's width of the edge it shares with the earlier one."""
    over, by = in_odd_rings(pair.value.over), in_odd_rings(pair.value.by)
    grid = TOLERANCE if any(map(_is_slanted, pair.value.over)) else None
    seam = shapely.intersection(over.boundary, by.boundary, grid_size=grid)
    lines = [part for part in shapely.get_parts(seam) if part.length > 0]
    if sum(part.length for part in lines) <= _LEAST_SEAM:
        return _Strip((), 0.0, (0.0, 0.0))
    seam = shapely.line_merge(shapely.multilinestrings(lines))
    band = shapely.buffer(seam, pair.value.width, cap_style="flat", join_style="mitre")
    parts = polygons_in(shapely.intersection(band, by, grid_size=grid))
    middle = shapely.point_on_surface(max(parts, key=lambda part: part.area))
    rings = tuple(shapely.get_coordinates(part.exterior)[:-1] for part in parts)
    return _Strip(rings, sum(part.area for part in parts), (middle.x, middle.y))


def _is_slanted(ring: Floats) -> bool:
    """Whether a side runs neither level nor upright; those that do are equal to the last digit in both trims."""
    return bool(np.abs(ring - np.roll(ring, 1, axis=0)).min(axis=1).max() > 0)


def _lap(over: Sheet, by: Sheet, strip: _Strip) -> Lap:
    x, y = over.outline[0]
    return Lap(
        over=over.number,
        by=by.number,
        edge="along" if over.row == by.row else "up",
        rings=tuple(tuple((x + dx, y + dy) for dx, dy in ring.tolist()) for ring in strip.rings),
        area=strip.area,
        middle=(x + strip.middle[0], y + strip.middle[1]),
    )


def lap_rings(sheet: Sheet, laps: Iterable[Lap]) -> Iterator[Ring]:
    """The strips of a sheet's own flange on which later sheets lie."""
    return (ring for lap in laps if lap.over == sheet.number for ring in lap.rings)


def cut_outline(sheet: Sheet, laps: Iterable[Lap]) -> CutOutline:
    """What is cut of a sheet: its trim, and of its flange what lies under later sheets; the rest of it goes."""
    strips = [shapely.Polygon(ring) for ring in lap_rings(sheet, laps)]
    whole = shapely.union_all([*trim_shapes([sheet]), *strips], grid_size=TOLERANCE)
    found = [rings_of(part) for part in polygons_in(whole)]
    outer = tuple(ring for ring, _ in found)
    return CutOutline(outer, tuple(hole for _, holes in found for hole in holes), float(whole.area))
