"""Which lines are read: some always, and between them joint lines by halving, so that a hotter day only adds lines."""

from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Sequence
from itertools import pairwise
from math import floor, inf

from app.brickwork.lattice import Floats
from app.liner.lines import Line
from app.panel.tolerance import TOLERANCE


def read_lines(fixed: Sequence[Line], joints: Floats, span: float, module: float) -> Iterator[Line]:
    """Every fixed line, and joint lines between them so that no two lines stand farther apart than `span` inches
    rounded down to whole modules, counted from the hook at 0; all rising.

    A gap that is too wide is parted at the joint line nearest its middle, and each part again. Where a gap is parted
    rests on the fixed lines and the joints alone, so a shorter span keeps every line of a longer one. A gap without a
    joint line stays as it is. No fixed lines give none.
    """
    most = inf if span == inf else floor(span / module + TOLERANCE) * module
    known: list[float] = joints.tolist()
    for (low, _), (high, name) in pairwise([(0.0, ""), *fixed]):
        yield from ((line, "") for line in _halved(low, high, known, most))
        yield high, name


def _halved(low: float, high: float, joints: list[float], most: float) -> Iterator[float]:
    """Joint lines strictly between two lines, rising."""
    first, last = bisect_right(joints, low + TOLERANCE), bisect_left(joints, high - TOLERANCE)
    if high - low <= most + TOLERANCE or first >= last:
        return
    middle = (low + high) / 2
    after = bisect_left(joints, middle, first, last)
    line = min(joints[max(first, after - 1) : min(after + 1, last)], key=lambda joint: abs(joint - middle))
    yield from _halved(low, line, joints, most)
    yield line
    yield from _halved(line, high, joints, most)
