"""Seams between liner sheets, each drawn once, so that broken lines do not fill each other's gaps."""

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from app.drawing.marks import Counts, Floats, Lines

Ring = tuple[tuple[float, float], ...]
Flags = NDArray[np.bool_]

DIGITS = 4
"""Corners closer than a ten-thousandth of an inch are one."""

FAR = 2**25
"""Ten-thousandths of an inch in 279 ft: no corner is beyond."""


def seams(rings: Sequence[Ring]) -> Lines:
    """The edges of all rings, each once, in runs as long as may be; none for no rings.

    Level edges that overlap in part are drawn once too; other edges are known again only when equal.
    """
    if not rings:
        return Lines(np.zeros((0, 2)), np.zeros(0, dtype=np.int64), "sheet")
    start, end = _edges(rings)
    kept = _first_of_equal(start, end)
    start, end = start[kept], end[kept]
    follows = np.append(False, (start[1:] == end[:-1]).all(axis=1) & (np.diff(np.flatnonzero(kept)) == 1))
    start, end, is_whole = _level_once(start, end)
    is_left = (start != end).any(axis=1)
    follows &= is_whole & np.append(False, (is_whole & is_left)[:-1])
    return _runs(start[is_left], end[is_left], follows[is_left])


def _edges(rings: Sequence[Ring]) -> tuple[Floats, Floats]:
    start = np.round(np.concatenate([np.asarray(ring) for ring in rings]), DIGITS)
    count = np.array([len(ring) for ring in rings])
    following = np.arange(len(start)) + 1
    last = np.cumsum(count) - 1
    following[last] = last - count + 1
    return start, start[following]


def _first_of_equal(start: Floats, end: Floats) -> Flags:
    """Which edges are not equal to an earlier one, in either direction."""
    scaled = np.rint(np.concatenate([start, end]) * 10**DIGITS).astype(np.int64)
    _, corner = np.unique(scaled[:, 0] * (2 * FAR) + scaled[:, 1], return_inverse=True)
    one, other = corner[: len(start)], corner[len(start) :]
    key = np.minimum(one, other) * (len(corner) + 1) + np.maximum(one, other)
    _, first = np.unique(key, return_index=True)
    kept = np.zeros(len(start), dtype=np.bool_)
    kept[first] = True
    return kept


def _level_once(start: Floats, end: Floats) -> tuple[Floats, Floats, Flags]:
    """Level edges less what those to their left on the same line cover, and which edges are as they were."""
    start, end = start.copy(), end.copy()
    level = np.flatnonzero(start[:, 1] == end[:, 1])
    left, right = np.minimum(start[level, 0], end[level, 0]), np.maximum(start[level, 0], end[level, 0])
    order = np.lexsort((left, start[level, 1]))
    level, left, right = level[order], left[order], right[order]
    line = np.cumsum(np.append(0, np.diff(start[level, 1]) != 0)) * float(FAR)
    covered = np.append(-np.inf, np.maximum.accumulate(right + line)[:-1]) - line
    fresh = np.minimum(np.maximum(left, covered), right)
    is_rising = start[level, 0] < end[level, 0]
    start[level, 0] = np.where(is_rising, fresh, start[level, 0])
    end[level, 0] = np.where(is_rising, end[level, 0], fresh)
    is_whole = np.ones(len(start), dtype=np.bool_)
    is_whole[level] = fresh == left
    return start, end, is_whole


def _runs(start: Floats, end: Floats, follows: Flags) -> Lines:
    """Edges that follow on the one before become one line with it."""
    points = np.stack([start, end], axis=1).reshape(-1, 2)
    shown = np.stack([~follows, np.ones(len(follows), dtype=np.bool_)], axis=1).reshape(-1)
    first = np.flatnonzero(~follows)
    count: Counts = np.diff(np.append(first, len(follows))) + 1
    return Lines(points[shown], count, "sheet")
