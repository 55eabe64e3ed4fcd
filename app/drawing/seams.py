"""Seams between liner sheets, each drawn once, so that broken lines do not fill each other's gaps."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from app.drawing.marks import Counts, Floats, Lines
from app.drawing.paths import TICKS

Ring = tuple[tuple[float, float], ...]
Flags = NDArray[np.bool_]

SAME = 1 / TICKS
"""Inches: lines this near are one, for no drawing shows them apart."""

OFF_TIE = 0.137
"""Added before rounding: offsets of whole 1/64 in. and of thirds then lie far from where rounding turns."""

FAR = 2**25
"""Ten-thousandths of an inch in 279 ft: no line passes the origin at such a distance."""


@dataclass(frozen=True, slots=True)
class _Edges:
    """Edges as pieces of lines: unit direction (rightwards, or straight up), which line, and from where to where."""

    start: Floats
    end: Floats
    direction: Floats
    line: NDArray[np.int64]
    low: Floats
    high: Floats


def seams(rings: Sequence[Ring]) -> Lines:
    """The edges of all rings, each part of them once, in runs as long as may be; none for no rings."""
    if not rings:
        return Lines(np.zeros((0, 2)), np.zeros(0, dtype=np.int64), "sheet")
    edges = _edges(rings)
    fresh = _fresh_from(edges)
    is_left, is_whole = edges.high - fresh > SAME, fresh - edges.low <= SAME
    start, end = _cut_back(edges, fresh, is_whole)
    follows = np.append(False, (edges.start[1:] == edges.end[:-1]).all(axis=1) & (is_left & is_whole)[:-1]) & is_whole
    return _runs(start[is_left], end[is_left], follows[is_left])


def _edges(rings: Sequence[Ring]) -> _Edges:
    start = np.concatenate([np.asarray(ring) for ring in rings])
    count = np.array([len(ring) for ring in rings])
    following = np.arange(len(start)) + 1
    last = np.cumsum(count) - 1
    following[last] = last - count + 1
    end = start[following]
    step = end - start
    direction = step / np.maximum(np.hypot(step[:, 0], step[:, 1]), SAME)[:, None]
    is_back = (direction[:, 0] < -SAME) | ((np.abs(direction[:, 0]) <= SAME) & (direction[:, 1] < 0))
    direction[is_back] *= -1
    offset = direction[:, 0] * start[:, 1] - direction[:, 1] * start[:, 0]
    at = (direction * start).sum(axis=1), (direction * end).sum(axis=1)
    return _Edges(start, end, direction, _line_numbers(direction[:, 1], offset), np.minimum(*at), np.maximum(*at))


def _line_numbers(slope: Floats, offset: Floats) -> NDArray[np.int64]:
    """Equal for edges on one line: same slope, same distance from the origin."""
    keys = np.rint(np.column_stack([slope, offset]) * TICKS + OFF_TIE).astype(np.int64)
    numbers: NDArray[np.int64] = np.unique(keys[:, 0] * FAR + keys[:, 1], return_inverse=True)[1]
    return numbers


def _fresh_from(edges: _Edges) -> Floats:
    """From where on each edge is not covered by those before it on its line."""
    order = np.lexsort((edges.high, edges.low, edges.line))
    beyond = edges.line[order] * (np.ptp([edges.low, edges.high]) + 1)
    covered = np.append(-np.inf, np.maximum.accumulate(edges.high[order] + beyond)[:-1]) - beyond
    fresh = np.empty_like(edges.low)
    fresh[order] = np.minimum(np.maximum(edges.low[order], covered), edges.high[order])
    return fresh


def _cut_back(edges: _Edges, fresh: Floats, is_whole: Flags) -> tuple[Floats, Floats]:
    """Start and end of what is left of each edge, the way its ring runs."""
    cut = edges.direction * (fresh - edges.low)[:, None]
    is_along = ((edges.end - edges.start) * edges.direction).sum(axis=1) > 0
    start = np.where((~is_whole & is_along)[:, None], edges.start + cut, edges.start)
    end = np.where((~is_whole & ~is_along)[:, None], edges.end + cut, edges.end)
    return start, end


def _runs(start: Floats, end: Floats, follows: Flags) -> Lines:
    """Edges that follow on the one before become one line with it."""
    points = np.stack([start, end], axis=1).reshape(-1, 2)
    shown = np.stack([~follows, np.ones(len(follows), dtype=np.bool_)], axis=1).reshape(-1)
    first = np.flatnonzero(~follows)
    count: Counts = np.diff(np.append(first, len(follows))) + 1
    return Lines(points[shown], count, "sheet")
