"""Joints at the edge of a region whose own sheet would hold no brick: which liner lies there. See `with_strips`."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import chain

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from app.brickwork.turning import turned_points
from app.liner.cuts import Ring
from app.liner.trims import Shapes, polygons_in, rings_of, trim_shapes
from app.liner.values import BareStrip, Sheet
from app.panel.tolerance import TOLERANCE

LEAST = 1e-4
"""Square inches; less than this without a sheet is float round-off, not a place."""

_ANY = 1e6
"""A mitre as long as any that two cuts make."""

_STEPS = (1 / 16, 1 / 4, 1.0)
"""Shares of a lap by which a sheet is moved to find its flange, the narrowest for the gaps between its teeth."""


@dataclass(frozen=True, slots=True)
class RegionLaid:
    """What one region has to cover, the sheets laid on it in order, and by how much its sheets are turned, degrees."""

    cover: BaseGeometry
    sheets: list[Sheet]
    turn: float


def with_strips(laid: Sequence[RegionLaid], lap: float) -> tuple[list[Sheet], tuple[BareStrip, ...]]:
    """All sheets in order, and the strips of the field on which no trim lies, by region; square inches and inches.

    A joint that would take a sheet without brick goes to the trim of a sheet beside it that lies under it in full;
    where there is none, the flange of a sheet laid before may reach it, and what is left has to be taped. The sheets
    as they are and no strips where all is covered.
    """
    sheets = [sheet for one in laid for sheet in one.sheets]
    slots = [slot for one in laid for slot in _slots(one)]
    if not slots or not sheets:
        return sheets, tuple(BareStrip(None, *rings_of(slot), slot.area) for slot in slots)
    turns = [one.turn for one in laid for _ in one.sheets]
    found = _Beside(sheets, turns, lap)
    strips = [strip for slot in slots for strip in found.strips(slot)]
    return found.sheets, tuple(strips)


def _slots(one: RegionLaid) -> list[shapely.Polygon]:
    """What no sheet of a region lies under; nothing is looked for where the areas are equal."""
    if one.cover.area - sum(sheet.area for sheet in one.sheets) <= LEAST:
        return []
    under = _under(tuple(sheet.outline for sheet in one.sheets))
    slots = _sound(shapely.difference(one.cover, under), 2 * TOLERANCE)
    return [part for slot in slots for part in polygons_in(slot.intersection(one.cover)) if part.area > LEAST]


@lru_cache(maxsize=32)
def _full(outlines: tuple[Ring, ...]) -> Shapes:
    """The full sheets of these outlines; kept, as an edit leaves them where they lie."""
    corners = np.fromiter(chain.from_iterable(chain.from_iterable(outlines)), dtype=np.float64).reshape(-1, 2)
    owner = np.repeat(np.arange(len(outlines)), [len(ring) for ring in outlines])
    shapes: Shapes = np.asarray(shapely.polygons(shapely.linearrings(corners, indices=owner)))
    return shapes


@lru_cache(maxsize=32)
def _under(outlines: tuple[Ring, ...]) -> BaseGeometry:
    """What full sheets of these outlines lie under, a tolerance over their edges."""
    full = _full(outlines)
    joined = _joined(full)
    if joined is not None:
        return joined
    return shapely.union_all(shapely.buffer(full, TOLERANCE, join_style="mitre"))


def _joined(full: Shapes) -> BaseGeometry | None:
    """Sheets that meet along whole edges, joined ten times faster than any shapes; None where their area says that
    they do not, or GEOS does."""
    try:
        joined = shapely.buffer(shapely.coverage_union_all(full), TOLERANCE, join_style="mitre")
    except shapely.errors.GEOSException:
        return None
    grown = 2 * TOLERANCE * float(shapely.length(full).sum())
    return joined if abs(joined.area - float(shapely.area(full).sum())) <= grown else None


def _sound(shape: BaseGeometry, out: float = TOLERANCE) -> list[shapely.Polygon]:
    """The parts of a shape that are wider than round-off: drawn in by the tolerance and let out by `out`."""
    inner = shapely.buffer(shape, -TOLERANCE, join_style="mitre", mitre_limit=_ANY)
    outer = shapely.buffer(inner, out, join_style="mitre", mitre_limit=_ANY)
    return [part for part in polygons_in(outer) if part.area > LEAST]


class _Beside:
    """The sheets of a panel, to which strips are given one after another."""

    def __init__(self, sheets: list[Sheet], turns: list[float], lap: float) -> None:
        self.sheets = list(sheets)
        self._turns, self._lap = turns, lap
        self._full = _full(tuple(sheet.outline for sheet in sheets))
        self._tree = shapely.STRtree(self._full)

    def strips(self, slot: shapely.Polygon) -> Iterator[BareStrip]:
        """What of a slot lies under no trim once the sheets beside it were given what they reach."""
        near = sorted(self._tree.query(slot, predicate="dwithin", distance=self._lap + TOLERANCE).tolist())
        left = [slot]
        for k in near:
            left = [rest for part in left for rest in self._given(k, part)]
        for k in near if self._lap > 0 else ():
            after = []
            for part in left:
                on, off = self._on_flange(k, part)
                yield from (BareStrip(self.sheets[k].number, *rings_of(one), one.area) for one in on)
                after += off
            left = after
        yield from (BareStrip(None, *rings_of(part), part.area) for part in left)

    def _given(self, k: int, slot: shapely.Polygon) -> list[shapely.Polygon]:
        """What is left of a slot once sheet k has taken what it lies under in full, where that is beside its trim."""
        trim = trim_shapes([self.sheets[k]])[0]
        taken = [part for part in _sound(slot.intersection(self._full[k])) if _seam(part, trim).length > LEAST]
        if not taken:
            return [slot]
        self.sheets[k] = _with(self.sheets[k], trim, taken, self._full[k])
        return _sound(slot.difference(shapely.union_all(taken)))

    def _on_flange(self, k: int, slot: shapely.Polygon) -> tuple[list[shapely.Polygon], list[shapely.Polygon]]:
        """The parts of a slot on the flange of sheet k, where that was not cut away, and the others."""
        seam = _seam(slot, trim_shapes([self.sheets[k]])[0])
        edge = seam.intersection(shapely.buffer(shapely.boundary(self._full[k]), 3 * TOLERANCE))
        if edge.length <= LEAST:
            return [], [slot]
        band = shapely.buffer(shapely.line_merge(edge), self._lap, cap_style="square", join_style="mitre")
        flange = _flange(self.sheets[k], self._turns[k], self._lap)
        on = _sound(shapely.intersection_all([slot, band, flange]))
        return on, _sound(slot.difference(shapely.union_all(on))) if on else [slot]


def _seam(part: BaseGeometry, trim: BaseGeometry) -> BaseGeometry:
    """Along what a part touches a trim."""
    seam: BaseGeometry = shapely.boundary(trim).intersection(shapely.buffer(part, 3 * TOLERANCE, join_style="mitre"))
    lines = [line for line in shapely.get_parts(seam).tolist() if line.length > 10 * TOLERANCE]
    return shapely.union_all(lines)


def _flange(sheet: Sheet, turn: float, lap: float) -> BaseGeometry:
    """Where the flange along the two far edges of a full sheet lies."""
    ring = np.array(sheet.outline)
    ways = np.array([(1.0, 0.0), (0.0, 1.0), (1.0, 1.0)]) * sheet.away
    moves = turned_points(np.concatenate([ways * lap * share for share in _STEPS]), turn)
    return shapely.union_all(shapely.polygons(ring[None] + moves[:, None]))


def _with(sheet: Sheet, trim: BaseGeometry, taken: Sequence[BaseGeometry], full: BaseGeometry) -> Sheet:
    """A sheet with more left of it, without cracks between the old and the new, and not beyond its outline."""
    grown = shapely.buffer(shapely.union_all([trim, *taken]), TOLERANCE, join_style="mitre", mitre_limit=_ANY)
    closed = shapely.buffer(grown, -TOLERANCE, join_style="mitre", mitre_limit=_ANY)
    parts = polygons_in(closed.intersection(full))
    rings = [rings_of(part) for part in parts]
    area = sum(part.area for part in parts)
    if area >= full.area - TOLERANCE:
        return replace(sheet, is_trimmed=False, trim=(sheet.outline,), holes=(), area=full.area)
    holes = tuple(hole for _, some in rings for hole in some)
    return replace(sheet, trim=tuple(outer for outer, _ in rings), holes=holes, area=area)
