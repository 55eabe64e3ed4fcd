"""Measures as the saw is set: whole steps of 1/16 in., or of 1 mm in a metric project."""

from math import ceil

from app.lengths import NM_PER_INCH
from app.order.saw_curves import curve_points
from app.order.saw_values import Point
from app.panel.tolerance import TOLERANCE

SIXTEENTH, MILLIMETRE = NM_PER_INCH // 16, 1_000_000
"""The steps, nm."""

CURVE_PLACES = 4
"""Decimals of an inch of a point on a curve: nothing that is seen, and round-off of floats does not show."""


def step_of(length_unit: str) -> int:
    """The saw's step in nm for a project in this unit."""
    return SIXTEENTH if length_unit in ("in", "ft") else MILLIMETRE


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
    kept = [point for k, point in enumerate(kept) if not _is_straight(kept[k - 1], point, kept[(k + 1) % len(kept)])]
    return tuple(_from_lowest(kept)) if len(kept) >= 3 else points


def _place(value: float, whole: float, step: int) -> float:
    """A place along one axis: 0 and the whole exact, all else to the step."""
    if value <= TOLERANCE:
        return 0.0
    return whole if value >= whole - TOLERANCE else inches(min(round(nm(value) / step) * step, nm(whole)))


def _is_straight(before: Point, point: Point, after: Point) -> bool:
    (ax, ay), (bx, by), (cx, cy) = before, point, after
    return abs((bx - ax) * (cy - ay) - (by - ay) * (cx - ax)) <= TOLERANCE


def _from_lowest(points: list[Point]) -> list[Point]:
    """The same ring from its lowest corner, the left one of two, so that equal outlines are equal."""
    if not points:
        return points
    first = min(range(len(points)), key=lambda k: (points[k][1], points[k][0]))
    return points[first:] + points[:first]
