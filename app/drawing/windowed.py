"""What of marks lies in an upright window of their frame: shapes cut at its edges, words kept whole or left out."""

from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise

import numpy as np

from app.drawing.marks import Areas, Boxes, Circle, Floats, Letters, Lines, Mark, Text

Window = tuple[float, float, float, float]
"""Left, bottom, right and top, inches."""


def windowed(mark: Mark, window: Window) -> Iterator[Mark]:
    """The mark within the window; nothing for one outside. Lines along the window's edge are in it."""
    match mark:
        case Boxes():
            yield from _boxes(mark, window)
        case Areas():
            yield from _areas(mark, window)
        case Lines():
            yield from _lines(mark, window)
        case Letters():
            yield from _letters(mark, window)
        case Text() | Circle():
            if _holds(window, mark.x, mark.y):
                yield mark


def _holds(window: Window, x: float, y: float) -> bool:
    left, bottom, right, top = window
    return left <= x <= right and bottom <= y <= top


def _boxes(mark: Boxes, window: Window) -> Iterator[Boxes]:
    left, bottom, right, top = window
    x0, y0 = np.maximum(mark.x, left), np.maximum(mark.y, bottom)
    x1, y1 = np.minimum(mark.x + mark.width, right), np.minimum(mark.y + mark.height, top)
    kept = (x1 > x0) & (y1 > y0)
    if kept.any():
        yield Boxes(x0[kept], y0[kept], (x1 - x0)[kept], (y1 - y0)[kept], mark.style)


def _areas(mark: Areas, window: Window) -> Iterator[Areas]:
    rings = [_cut_ring(ring, window) for ring in np.split(mark.points, np.cumsum(mark.count)[:-1])]
    kept = [ring for ring in rings if len(ring) > 2]
    if kept:
        yield Areas(np.concatenate(kept), np.array([len(ring) for ring in kept]), mark.style)


def _cut_ring(ring: Floats, window: Window) -> Floats:
    """The ring cut along one edge of the window after the other."""
    left, bottom, right, top = window
    for axis, sign, at in ((0, 1.0, left), (0, -1.0, -right), (1, 1.0, bottom), (1, -1.0, -top)):
        if len(ring):
            ring = _cut_side(ring, axis, sign, at)
    return ring


def _cut_side(ring: Floats, axis: int, sign: float, at: float) -> Floats:
    """What lies where `sign` times the coordinate is at least `at`."""
    inside, kept = sign * ring[:, axis] - at, list[Floats]()
    for k in range(len(ring)):
        before, here = inside[k - 1], inside[k]
        if before * here < 0:
            kept.append(ring[k - 1] + (ring[k] - ring[k - 1]) * before / (before - here))
        if here >= 0:
            kept.append(ring[k])
    return np.array(kept).reshape(-1, 2)


def _lines(mark: Lines, window: Window) -> Iterator[Lines]:
    """Each straight part for itself."""
    lines = np.split(mark.points, np.cumsum(mark.count)[:-1])
    parts = (_cut_part(one, two, window) for points in lines for one, two in pairwise(points))
    kept = [part for part in parts if part is not None]
    if kept:
        yield Lines(np.concatenate(kept), np.full(len(kept), 2), mark.style)


def _cut_part(one: Floats, two: Floats, window: Window) -> Floats | None:
    left, bottom, right, top = window
    start, end, way = 0.0, 1.0, two - one
    for axis, low, high in ((0, left, right), (1, bottom, top)):
        if way[axis] == 0:
            if not low <= one[axis] <= high:
                return None
            continue
        near, far = sorted(((low - one[axis]) / way[axis], (high - one[axis]) / way[axis]))
        start, end = max(start, near), min(end, far)
    return np.array([one + way * start, one + way * end]) if end > start else None


def _letters(mark: Letters, window: Window) -> Iterator[Letters]:
    left, bottom, right, top = window
    kept = (mark.x >= left) & (mark.x <= right) & (mark.y >= bottom) & (mark.y <= top)
    if kept.any():
        letters = "".join(letter for letter, is_kept in zip(mark.letters, kept.tolist(), strict=True) if is_kept)
        yield replace(mark, x=mark.x[kept], y=mark.y[kept], letters=letters)
