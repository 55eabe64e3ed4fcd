"""Where more fixing lines would keep the liner within the tolerance; see `fixing_advice`."""

from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

import numpy as np

from app.brickwork.advice_words import length_as_typed
from app.brickwork.lattice import Floats
from app.brickwork.layout import Layout
from app.lengths import Length
from app.liner.growth import free_lengths, free_span, growth, worst_temperature
from app.liner.lines import Line, held_lines
from app.liner.tape import Tape, joint_lines, tapes
from app.liner.values import Drift, LayingWindow
from app.panel.project import Day, Liner
from app.panel.shapes import Point
from app.panel.tolerance import TOLERANCE
from app.panel.values import Fixing

MOST = 40
"""Fixing lines of one span that are worked out: with more, the hour of laying is what has to change."""


@dataclass(frozen=True, slots=True)
class FixingAdvice:
    """One fixing line more: where, and what it alone saves at the worst temperature of the day.

    `position` is in the face frame and `running` from the tape's hook, inches; `line` is the fixing's own. At the
    checkpoint `mark` ("" for the span's end, which has none) growth falls from `before` to `after`, both without sign.
    """

    axis: str
    position: float
    running: float
    line: tuple[Point, Point]
    mark: str
    at: float
    before: float
    after: float

    def typed(self, unit: str) -> str:
        """The line as the field of the edit that adds it takes it, lengths in the project's unit."""
        return "; ".join(f"{length_as_typed(x, unit)}, {length_as_typed(y, unit)}" for x, y in self.line)


@dataclass(frozen=True, slots=True)
class SpanAdvice:
    """The fewest fixing lines for one span whose free growth passes the tolerance at `temperature`.

    `grows` is the growth at the span's end as it is, `least` with all of `lines`, without sign, inches. No lines where
    even a line on every joint would not do, or where more than `MOST` would be needed.
    """

    span: LayingWindow
    temperature: float
    grows: float
    least: float
    tolerance: float
    lines: tuple[FixingAdvice, ...]


def fixing_advice(layout: Layout, drift: Drift, liner: Liner, day: Day) -> tuple[SpanAdvice, ...]:
    """For each span of `drift` that drifts past the tolerance at the day's worst: the fewest fixing lines against it.

    Lines stand on joint lines, as evenly as those allow, and run over the whole brick field. What is said of them was
    computed again with them drawn on the panel. `drift` must be of this layout, liner and day. Nothing where every
    span stays within the tolerance, or for an empty brick field.
    """
    if layout.field.is_empty:
        return ()
    worst = worst_temperature(day, liner)
    most = free_span(liner, worst)
    by_axis = {tape.axis: tape for tape in tapes(layout, layout.panel.laying.corner)}
    wide = [span for span in drift.spans if span.end - span.start > most + TOLERANCE]
    return tuple(_advice(_Case(layout, drift, liner, worst, by_axis[span.axis], span), most) for span in wide)


@dataclass(frozen=True, slots=True)
class _Case:
    """One span that is too long, and what it is part of."""

    layout: Layout
    drift: Drift
    liner: Liner
    worst: float
    tape: Tape
    span: LayingWindow

    def grown(self, length: float) -> float:
        degrees = self.worst - self.liner.reference_temperature
        return abs(growth(length, self.liner.expansion_per_degree, degrees))

    def line(self, running: float) -> tuple[Point, Point]:
        """A fixing line across the tape, over the whole brick field."""
        at = Length.from_inches(self.tape.running(running))
        low, high = (Length.from_inches(end) for end in self._across)
        return ((at, low), (at, high)) if self.tape.axis == "x" else ((low, at), (high, at))

    @property
    def _across(self) -> tuple[float, float]:
        x0, y0, x1, y1 = self.layout.field.bounds
        return (y0, y1) if self.tape.axis == "x" else (x0, x1)

    def held_with(self, lines: Sequence[float]) -> list[Line]:
        """What holds the liner once fixing lines are drawn here."""
        fixings = tuple(Fixing(self.line(line)) for line in lines)
        panel = replace(self.layout.panel, fixings=(*self.layout.panel.fixings, *fixings))
        return held_lines(replace(self.layout, panel=panel), self.tape, self.liner)


def _advice(case: _Case, most: float) -> SpanAdvice:
    span, joints = case.span, joint_lines(case.layout, case.tape, case.liner).tolist()
    within = joints[bisect_right(joints, span.start + TOLERANCE) : bisect_left(joints, span.end - TOLERANCE)]
    lines = fewest_lines(within, span.start, span.end, most)
    longest = float(_just_before(case.held_with(lines), [*lines, span.end]).max())
    if longest > most + 4 * TOLERANCE:
        lines, longest = [], span.end - span.start
    told = tuple(_told(case, line) for line in lines)
    grows = case.grown(span.end - span.start)
    return SpanAdvice(span, case.worst, grows, case.grown(longest), case.liner.tolerance.inches, told)


def _just_before(held: Sequence[Line], at: Sequence[float]) -> Floats:
    """Lengths of liner that are free right before running dimensions at which something may hold it."""
    free: Floats = free_lengths(held, np.array(at) - 2 * TOLERANCE) + 2 * TOLERANCE
    return free


def _told(case: _Case, line: float) -> FixingAdvice:
    """The line with what it saves at the last checkpoint of the span beyond it."""
    span = case.span
    beyond = [
        (point.nominal, point.mark)
        for point in case.drift.checkpoints
        if point.axis == span.axis and line + TOLERANCE < point.nominal and point.held_from < line
    ]
    at, mark = max((point for point in beyond if point[0] < span.end + TOLERANCE), default=(span.end, ""))
    after = float(_just_before(case.held_with([line]), [at])[0])
    ends = case.grown(at - span.start), case.grown(after)
    return FixingAdvice(span.axis, case.tape.running(line), line, case.line(line), mark, at, *ends)


def fewest_lines(joints: list[float], start: float, end: float, most: float) -> list[float]:
    """As few of the rising `joints` as part the span so that no part is longer than `most`, evenly where that goes.

    Inches; no lines for a span that needs none, and none where no choice does it or more than `MOST` are needed.
    """
    lines: list[float] = []
    last = start
    while end - last > most + TOLERANCE:
        k = bisect_right(joints, last + most + TOLERANCE) - 1
        if k < 0 or joints[k] <= last + TOLERANCE or len(lines) == MOST:
            return []
        last = joints[k]
        lines.append(last)
    even = list(_even(joints, start, end, len(lines)))
    gaps = np.diff([start, *even, end])
    return even if gaps.min() > TOLERANCE and gaps.max() <= most + TOLERANCE else lines


def _even(joints: list[float], start: float, end: float, count: int) -> Iterator[float]:
    """The joint nearest to each of `count` even parts' ends."""
    for k in range(1, count + 1):
        wanted = start + (end - start) * k / (count + 1)
        yield min(joints, key=lambda joint: abs(joint - wanted))
