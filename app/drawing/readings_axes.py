"""The ground of a plot of readings: the tape along the bottom, errors up and down, the band, what heat would do."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from app.drawing.declutter import spread
from app.drawing.lettering import with_fractions
from app.drawing.marks import SMALL, Mark, Text, box, line, segments
from app.drawing.scales import Scale
from app.lengths import format_length
from app.liner.drift import expected_at
from app.liner.values import Checkpoint

MINUS = "\u2212"

HEIGHT_MM = 72.0
"""From the greatest error short to the greatest long, on paper."""

STEPS = (1 / 64, 1 / 32, 1 / 16, 1 / 8, 1 / 4, 1 / 2, 1.0, 2.0)
STEPS_MM = (0.5, 1, 2, 5, 10, 20, 50)
EACH_SIDE = 5
"""Errors are numbered by the smallest step of a rule that needs no more numbers than this on either side."""

APART_MM, LEADER_MM = 7.0, 4.0


@dataclass(frozen=True, slots=True)
class Axes:
    """Where things stand: x in inches from the tape's hook; y in inches of drawing from the foot of the plot.

    `reach` is the length of the tape, `most` the greatest error shown either way, `band` that of the checkpoints.
    """

    reach: float
    most: float
    band: float
    scale: Scale
    unit: str

    @property
    def height(self) -> float:
        return self.mm(HEIGHT_MM)

    def mm(self, paper: float) -> float:
        """Inches of drawing under so many millimetres of paper."""
        return paper * self.scale.inches_per_mm

    def up(self, error: float) -> float:
        """Where an error in inches stands."""
        return self.height * (0.5 + error / (2 * self.most))


def signed(error: float, unit: str) -> str:
    """An error with its sign, to 1/64 in. or 0.5 mm; "0" for less than half of that."""
    tick = 0.5 / 25.4 if unit == "mm" else 1 / 64
    ticks = round(abs(error) / tick)
    words = f"{ticks / 2:g} mm" if unit == "mm" else with_fractions(format_length(ticks / 64, unit, 64))
    return f"{'+' if error > 0 else MINUS}{words}" if ticks else "0"


def ground(axes: Axes, points: Sequence[Checkpoint], temperature: float | None, degree: str) -> Iterator[Mark]:
    """Frame, band, errors, checkpoints in tape order and, at a bed temperature, what they read if nothing is corrected.

    Nothing but the frame for no checkpoints.
    """
    if points:
        low, high = axes.up(-axes.band), axes.up(axes.band)
        yield box(0, low, axes.reach, high - low, "concrete")
        yield segments([(0, at, axes.reach, at) for at in (low, high)], "rule")
        yield from _errors(axes)
        yield from _tape(axes, points)
    zero = axes.up(0)
    yield segments([(0, zero, axes.reach, zero)], "tick")
    yield line([(0, axes.height), (0, 0), (axes.reach, 0)], "rule")
    if points and temperature is not None:
        yield from _expected(axes, points, temperature, degree)


def _errors(axes: Axes) -> Iterator[Mark]:
    steps = [mm / 25.4 for mm in STEPS_MM] if axes.unit == "mm" else list(STEPS)
    step = next((step for step in steps if axes.most / step <= EACH_SIDE), steps[-1])
    count = int(axes.most / step + 1e-9)
    places = [k * step for k in range(-count, count + 1)]
    yield segments([(-axes.mm(1.4), axes.up(at), 0, axes.up(at)) for at in places], "rule")
    for at in places:
        yield Text(-axes.mm(2.2), axes.up(at), signed(at, axes.unit), "text", SMALL, "end")
    for words, error in (("long", axes.most / 2), ("short", -axes.most / 2)):
        yield Text(-axes.mm(18), axes.up(error), words, "text quiet", SMALL, "middle", 90.0)


def _tape(axes: Axes, points: Sequence[Checkpoint]) -> Iterator[Mark]:
    """A line up at every checkpoint, with its mark and running dimension below, turned so that all have room."""
    yield segments([(point.nominal, 0, point.nominal, axes.height) for point in points if point.control], "rule")
    yield segments([(point.nominal, 0, point.nominal, axes.mm(1.6)) for point in points], "tick")
    places = spread([point.nominal for point in points], [axes.mm(APART_MM)] * len(points))
    foot = -axes.mm(LEADER_MM)
    yield segments([(point.nominal, 0, at, foot) for point, at in zip(points, places, strict=True)], "rule")
    for point, at in zip(points, places, strict=True):
        yield Text(at, foot - axes.mm(2), point.mark, "text strong", SMALL)
        length = with_fractions(format_length(point.nominal, axes.unit).removeprefix("≈ "))
        yield Text(at, foot - axes.mm(4.4), length, "text quiet", SMALL, "end", 90.0)


def _expected(axes: Axes, points: Sequence[Checkpoint], temperature: float, degree: str) -> Iterator[Mark]:
    """From every held line on: nothing there, then growing up to the last checkpoint before the next one."""
    way: list[tuple[float, float]] = []
    for point in points:
        held = (point.held_from, axes.up(0))
        if not way or held not in way:
            way.append(held)
        if point.nominal > point.held_from:
            way.append((point.nominal, axes.up(expected_at(point, temperature) - point.nominal)))
    yield line(way, "sheet")
    x, y = way[-1]
    beside = axes.mm(1.5)
    yield Text(x + beside, y + axes.mm(1.6), "not corrected,", "text sheet", SMALL, "start")
    yield Text(x + beside, y - axes.mm(1.6), f"{temperature:g} °{degree}", "text sheet", SMALL, "start")
