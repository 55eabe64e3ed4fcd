"""The sheets of one region, kept from layout to layout: an edit changes what is left of few of them."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from app.brickwork.boundary import edges
from app.brickwork.lattice import Flags, Floats, Ints
from app.liner.left import Left, left_of
from app.liner.values import Sheet
from app.panel.tolerance import TOLERANCE

Edge = tuple[float, ...]
"""x0, y0, x1, y1 of one edge of a cover, the cover on its left."""

_NOT_LAID: tuple[frozenset[Edge], dict[bytes, Sheet]] = frozenset(), {}


@dataclass(frozen=True, slots=True, eq=False)
class FullSheets:
    """Where the full sheets of one region lie: `full` has shape (sheets, corners, 2); numbered on from `before`."""

    region: str
    full: Floats
    column: Ints
    row: Ints
    away: tuple[int, int]
    before: int

    @property
    def places(self) -> Iterator[tuple[int, int, int]]:
        """Number, column and row of each."""
        places = zip(self.column.tolist(), self.row.tolist(), strict=True)
        return ((number, *place) for number, place in enumerate(places, start=self.before + 1))

    @property
    def content(self) -> list[bytes]:
        """Of each sheet where it lies, as a key."""
        whole, each = self.full.tobytes(), self.full[0].nbytes
        return [whole[k : k + each] for k in range(0, len(whole), each)]


def sheets_on(cover: BaseGeometry, sheets: FullSheets, panel: str) -> list[Sheet]:
    """What of each full sheet lies on the cover; empty for no sheets.

    `panel` is the panel's mark: what its region was like the last time is remembered, and makes no other result.
    """
    return _laid_last(panel, sheets.region).on(cover, sheets) if len(sheets.full) else []


class _RegionSheets:
    """The sheets of one region as they were laid last: only those near an edge that came or went are cut again."""

    def __init__(self) -> None:
        self._last = _NOT_LAID

    def on(self, cover: BaseGeometry, sheets: FullSheets) -> list[Sheet]:
        """The sheets over a cover. What is left of one rests on the cover's edges over its box alone: each has some
        brick on it, so where there are none it is whole."""
        known, last = self._last
        now, keys = _edges_of(cover), sheets.content
        low, high = sheets.full.min(axis=1), sheets.full.max(axis=1)
        is_new = np.array([key not in last for key in keys])
        doubtful = np.flatnonzero(is_new | _near(now ^ known, low, high))
        cut = _cut(cover, sheets, doubtful, [last.get(keys[k]) for k in doubtful.tolist()])
        again = dict(zip(doubtful.tolist(), cut, strict=True))
        laid = [
            _numbered(again.get(k) or last[key], place, sheets.away)
            for k, (key, place) in enumerate(zip(keys, sheets.places, strict=True))
        ]
        self._last = now, dict(zip(keys, laid, strict=True))
        return laid


@lru_cache(maxsize=64)
def _laid_last(panel: str, region: str) -> _RegionSheets:  # noqa: ARG001 - only told apart by it
    return _RegionSheets()


def _edges_of(cover: BaseGeometry) -> frozenset[Edge]:
    edge = edges(cover)
    return frozenset(zip(*(side.tolist() for side in (edge.x0, edge.y0, edge.x1, edge.y1)), strict=True))


def _near(some: frozenset[Edge], low: Floats, high: Floats) -> Flags:
    """Whether any of the edges is over each box."""
    rows = np.array(list(some), dtype=np.float64).reshape(-1, 2, 2)
    over = (rows.min(axis=1)[None] <= high[:, None]) & (rows.max(axis=1)[None] >= low[:, None])
    near: NDArray[np.bool_] = over.all(axis=2).any(axis=1)
    return near


def _cut(cover: BaseGeometry, sheets: FullSheets, which: Ints, known: list[Sheet | None]) -> list[Sheet]:
    """Some of the sheets, what is over the cover cut out of each; `known` is how each was laid last, if it was."""
    shapes = shapely.polygons(sheets.full[which])
    is_slanted = bool(np.abs(np.diff(sheets.full[:1], axis=1)).min(axis=2).max(initial=0.0) > TOLERANCE)
    shapely.prepare(cover)
    trimmed = np.flatnonzero(~shapely.covers(cover, shapes))
    left = dict(zip(trimmed.tolist(), left_of(cover, shapes[trimmed], is_slanted), strict=True))
    rows = zip(which.tolist(), shapely.area(shapes).tolist(), known, strict=True)
    return [_over(_whole(sheets, k, area, sheet), left.get(n)) for n, (k, area, sheet) in enumerate(rows)]


def _whole(sheets: FullSheets, k: int, area: float, known: Sheet | None) -> Sheet:
    """A sheet as it comes from the mould, yet without a number where it was not laid last."""
    if known is None:
        outline = tuple((x, y) for x, y in sheets.full[k].tolist())
        return Sheet(0, "", sheets.region, 0, 0, False, outline, (outline,), (), area, sheets.away)
    return replace(known, is_trimmed=False, trim=(known.outline,), holes=(), area=area) if known.is_trimmed else known


def _over(whole: Sheet, left: Left | None) -> Sheet:
    return whole if left is None else replace(whole, is_trimmed=True, trim=left.trim, holes=left.holes, area=left.area)


def _numbered(sheet: Sheet, place: tuple[int, int, int], away: tuple[int, int]) -> Sheet:
    number, column, row = place
    if (sheet.number, sheet.column, sheet.row, sheet.away) == (number, column, row, away):
        return sheet
    rings = sheet.outline, sheet.trim, sheet.holes
    return Sheet(number, str(number), sheet.region, column, row, sheet.is_trimmed, *rings, sheet.area, away)
