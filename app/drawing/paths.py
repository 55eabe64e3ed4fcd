"""SVG path data of many shapes at once, in inches with y down, to a ten-thousandth of an inch.

Every corner is rounded first and the steps between rounded corners are written, so no error adds up along a course.
Equal steps give equal text, made once and packed well.
"""

from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from app.drawing.marks import Areas, Boxes, Floats, Lines

TICKS = 10_000
"""Ticks in an inch: far below 1/64 in."""

RESTART = 32
"""Shapes between absolute moves: a browser adds up relative moves in single precision."""

Ticks = NDArray[np.int64]


def ticks(values: Floats) -> Ticks:
    """Inches in whole ticks."""
    whole: Ticks = np.rint(values * TICKS).astype(np.int64)
    return whole


@lru_cache(maxsize=16_384)
def number(value: int) -> str:
    """Ticks as inches without needless digits."""
    text = f"{value / TICKS:.4f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def boxes_path(boxes: Boxes, height: float) -> str:
    """All rectangles, course by course; empty for none. `height` is where y turns over, inches."""
    if not len(boxes.x):
        return ""
    x0, x1 = ticks(boxes.x), ticks(boxes.x + boxes.width)
    top, foot = ticks(height - boxes.y - boxes.height), ticks(height - boxes.y)
    order = np.lexsort((x0, foot, top))
    x0, x1, top, foot = x0[order], x1[order], top[order], foot[order]
    starts = np.ones(len(x0), dtype=np.bool_)
    starts[1:] = (top[1:] != top[:-1]) | (foot[1:] != foot[:-1])
    columns = (starts, x0, top, _differences(x0), x1 - x0, foot - top)
    rows = zip(*(column.tolist() for column in columns), strict=True)
    return "".join(
        (_move(x, y) if is_start else _step(dx, 0)) + _box(width, depth) for is_start, x, y, dx, width, depth in rows
    )


@lru_cache(maxsize=4096)
def _box(width: int, depth: int) -> str:
    return f"h{number(width)}v{number(depth)}h{number(-width)}z"


def _move(x: int, y: int) -> str:
    return f"M{number(x)} {number(y)}"


@lru_cache(maxsize=4096)
def _step(dx: int, dy: int) -> str:
    return f"m{number(dx)} {number(dy)}"


@lru_cache(maxsize=16_384)
def _line_to(dx: int, dy: int) -> str:
    if dy == 0:
        return f"h{number(dx)}"
    return f"v{number(dy)}" if dx == 0 else f"l{number(dx)} {number(dy)}"


def areas_path(areas: Areas, height: float) -> str:
    """All polygons, each closed; empty for none."""
    return _rings_path(areas.points, areas.count, height, "z")


def lines_path(lines: Lines, height: float) -> str:
    """All lines, none closed; empty for none."""
    return _rings_path(lines.points, lines.count, height, "")


def _rings_path(points: Floats, count: NDArray[np.int64], height: float, close: str) -> str:
    if not len(points):
        return ""
    x, y = ticks(points[:, 0]), ticks(height - points[:, 1])
    first = np.cumsum(count) - count
    dx, dy = _differences(x), _differences(y)
    text = [_line_to(step_x, step_y) for step_x, step_y in zip(dx.tolist(), dy.tolist(), strict=True)]
    opening = _openings(x[first], y[first]) if close else list(map(_move, x[first].tolist(), y[first].tolist()))
    for at, move in zip(first.tolist(), opening, strict=True):
        text[at] = f"{close}{move}" if at else move
    return "".join(text) + close


def _openings(x: Ticks, y: Ticks) -> list[str]:
    """How each closed shape begins: a step from the start of the one before, now and then an absolute move."""
    dx, dy = _differences(x).tolist(), _differences(y).tolist()
    absolute = list(map(_move, x.tolist(), y.tolist()))
    return [move if k % RESTART == 0 else _step(dx[k], dy[k]) for k, move in enumerate(absolute)]


def _differences(values: Ticks) -> Ticks:
    """Each value less the one before it, the first as it is: for short columns much faster than numpy's own."""
    steps = values.copy()
    steps[1:] -= values[:-1]
    return steps
