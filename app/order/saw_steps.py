"""Measures as the saw is set: whole steps of 1/16 in., or of 1 mm in a metric project."""

from math import ceil

import numpy as np

from app.lengths import NM_PER_INCH, SMALLEST_MARK
from app.order.saw_curves import curve_points
from app.order.saw_values import Point
from app.panel.rings import from_least, turns_only
from app.panel.tolerance import TOLERANCE

CURVE_PLACES = 4
"""Decimals of an inch of a point on a curve: nothing that is seen, and round-off of floats does not show."""


def step_of(length_unit: str) -> int:
    """The saw's step in nm for a project in this unit."""
    return nm(SMALLEST_MARK["in" if length_unit in ("in", "ft") else "mm"])


def nm(inches: float) -> int:
    """Inches as whole nanometres."""
    return round(inches * NM_PER_INCH)


def inches(length: int) -> float:
    """Whole nanometres as inches."""
    return length / NM_PER_INCH


def to_step(value: float, whole: float, step: int) -> int:
    """A measure to the nearest step, nm: the lower one where it lies between two, at least one, at most the whole.

    So no piece is cut more than half a step (1/32 in.) longer than its place, which its joint gives; one that comes
    within that of the whole brick is the whole brick.
    """
    if value >= whole - TOLERANCE:
        return nm(whole)
    steps = max(1, ceil(nm(value - TOLERANCE) / step - 0.5))
    return min(steps * step, nm(whole))


def outline_to_step(points: tuple[Point, ...], whole: tuple[float, float], step: int) -> tuple[Point, ...]:
    """An outline with each corner to the nearest step; the whole unit's own edges and points of a curve stay where
    they are.

    As it was where rounding would leave no area.
    """
    rounded = [
        (round(x, CURVE_PLACES), round(y, CURVE_PLACES))
        if is_curve
        else (_place(x, whole[0], step), _place(y, whole[1], step))
        for (x, y), is_curve in zip(points, curve_points(points), strict=True)
    ]
    kept = [point for k, point in enumerate(rounded) if point != rounded[k - 1]]
    corners = list(map(tuple, turns_only(np.array(kept).reshape(-1, 2)).tolist()))
    return from_least(corners) if len(corners) >= 3 else points


def _place(value: float, whole: float, step: int) -> float:
    """A place along one axis: 0 and the whole exact, all else to the step."""
    if value <= TOLERANCE:
        return 0.0
    return whole if value >= whole - TOLERANCE else inches(min(round(nm(value) / step) * step, nm(whole)))
