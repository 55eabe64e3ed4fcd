"""The tape under a plot: graduated from its hook, checkpoints hanging below it with their running dimensions."""

from collections.abc import Iterator, Sequence
from math import floor

from app.drawing.declutter import spread, that_fit
from app.drawing.layers.tape import DECIMETRE, FOOT, STEPS
from app.drawing.lettering import lettered
from app.drawing.marks import Circle, Mark, Text, box, line, segments
from app.drawing.plot import LETTERS, Frame
from app.liner.values import Checkpoint

NEAR, FAR = 3.0, 10.0
"""The strip's two edges, mm below the plot."""

LEADER, RING = 3.0, 3.1

NUMBER = {"in": 8.0, "mm": 14.0}
"""Room for one figure on the strip by the unit of lengths, mm."""

DEEP = FAR + LEADER + 2 * RING + 18.0
"""Room under a plot for the strip, the rings and the standing dimensions, mm."""


def tape_strip(frame: Frame, reach: float, points: Sequence[Checkpoint], unit: str) -> Iterator[Mark]:
    """Marks below the plot, whose x are running dimensions up to `reach` inches; no rings for no checkpoints.

    Where not all rings find room, those at plain joint lines go first; the plot's page lists all.
    """
    yield box(0.0, -FAR, frame.width, FAR - NEAR, "tape")
    yield from _graduations(frame, reach, unit)
    hook, out = frame.near, frame.near - frame.away * 1.4
    yield line([(out, -NEAR + 0.7), (hook, -NEAR + 0.7), (hook, -FAR)], "outline")
    yield from _rings(frame, points, unit)


def _graduations(frame: Frame, reach: float, unit: str) -> Iterator[Mark]:
    step, sign = (DECIMETRE, "") if unit == "mm" else (FOOT, "'")
    each = abs(frame.x(step) - frame.x(0.0))
    every = next((n for n in STEPS if n * each >= NUMBER[unit]), STEPS[-1])
    count = floor(reach / step + 1e-9)
    marked = [k for k in range(1, count + 1) if each >= 1.2 or k % every == 0]
    yield segments([(frame.x(k * step), -FAR, frame.x(k * step), -FAR + 1.6) for k in marked], "rule")
    for k in range(every, count + 1, every):
        if abs(frame.x(reach) - frame.x(k * step)) >= 3.0:
            words = f"{k / 10:g} m" if unit == "mm" else f"{k}{sign}"
            yield Text(frame.x(k * step), -FAR + 3.6, words, "text quiet", LETTERS)


def _rings(frame: Frame, points: Sequence[Checkpoint], unit: str) -> Iterator[Mark]:
    ordered = sorted(points, key=lambda point: frame.x(point.nominal))
    last = max((point.nominal for point in points), default=0.0)
    ranks = [0 if point.nominal == last else 1 if point.control else 2 for point in ordered]
    size = 2 * RING + 0.4
    shown = [ordered[k] for k in that_fit(ranks, [size] * len(ordered), frame.width + size)]
    places = spread([frame.x(point.nominal) for point in shown], [size] * len(shown))
    y = -FAR - LEADER - RING
    yield segments([(frame.x(point.nominal), -NEAR, frame.x(point.nominal), -NEAR - 2.2) for point in points], "tick")
    for point, place in zip(shown, places, strict=True):
        yield segments([(frame.x(point.nominal), -FAR, place, -FAR - LEADER)], "rule")
        yield Circle(place, y, RING, "checkpoint")
        yield Text(place, y, point.mark, "text strong", LETTERS if len(point.mark) < 3 else 0.8 * LETTERS)
        yield Text(place, y - RING - 0.8, lettered(point.nominal, unit), "text", LETTERS, "end", 90)
