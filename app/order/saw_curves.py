"""Which corners of a cut piece are corners, and which only points of a curve drawn as chords."""

from collections.abc import Sequence
from math import atan2, degrees

from app.order.saw_values import Point
from app.panel.rings import CHORDS_TURN


def curve_points(outline: Sequence[Point]) -> list[bool]:
    """For each point of a closed outline, whether it turns so little that it belongs to a curve; empty for none."""
    count = len(outline)
    return [abs(_turn(outline[k - 1], outline[k], outline[(k + 1) % count])) < CHORDS_TURN for k in range(count)]


def _turn(before: Point, point: Point, after: Point) -> float:
    (ax, ay), (bx, by), (cx, cy) = before, point, after
    turned = degrees(atan2(cy - by, cx - bx) - atan2(by - ay, bx - ax))
    return (turned + 180) % 360 - 180
