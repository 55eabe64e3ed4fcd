"""Growth along the panel over the day's temperatures against the band, the tape below it. See `growth_plot`."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from app.drawing.declutter import spread
from app.drawing.drawing import Drawing
from app.drawing.lettering import lettered, text_width_mm
from app.drawing.marks import Areas, Layer, Lines, Mark, Text, segments
from app.drawing.plot import LETTERS, LINE, PLOT, Frame, band_ground, boxed, end_labels, side_figures
from app.drawing.scales import Margins
from app.drawing.styles import Style
from app.drawing.tape_strip import DEEP, tape_strip
from app.liner.growth import growth
from app.liner.values import Drift, LayingWindow
from app.panel.project import Liner

HIGH = 62.0
SIDE, FAR_SIDE = 17.0, 29.0
"""Room beside the plot for figures and for the curves' temperatures, mm."""


@dataclass(frozen=True, slots=True)
class Warmth:
    """Bed temperatures of a plot in the project's `unit`: the day's ends, the one looked at, and the range shown."""

    day_low: float
    day_high: float
    at: float
    least: float
    most: float
    unit: str = "F"

    def said(self, temperature: float) -> str:
        return f"{temperature:g} °{self.unit}"


@dataclass(frozen=True, slots=True)
class _Plot:
    """What is plotted: the spans of one axis, and how far an inch grows at each temperature."""

    frame: Frame
    spans: tuple[LayingWindow, ...]
    liner: Liner
    warmth: Warmth
    unit: str

    def each(self, temperature: float) -> float:
        return growth(1.0, self.liner.expansion_per_degree, temperature - self.liner.reference_temperature)

    def curve(self, temperature: float) -> list[tuple[float, float]]:
        """Growth rises along each span from nothing, and is nothing again where the next line holds."""
        each = self.each(temperature)
        ends = [(at, (at - span.start) * each) for span in self.spans for at in (span.start, span.end)]
        return [(self.frame.x(x), self.frame.y(y)) for x, y in ends]

    def leaves(self, temperature: float) -> list[float]:
        """Running dimensions at which growth leaves the band, inches."""
        each = abs(self.each(temperature))
        free = self.liner.tolerance.inches / each if each > 0 else float("inf")
        return [span.start + free for span in self.spans if span.start + free < span.end]


def growth_plot(
    drift: Drift, axis: str, liner: Liner, warmth: Warmth, *, width: float = 240.0, unit: str = "in", turned: bool
) -> Drawing:
    """Growth along one axis, "x" or "y", from the tape's hook; the drawing is `width` mm wide.

    Curves stand for the day's lowest and highest temperature, the reference and the one looked at, the day's range is
    filled pale. `turned` runs from right to left, as the tape does when its hook is at the bed's right. A drawing of
    nothing for an axis without spans.
    """
    spans = tuple(span for span in drift.spans if span.axis == axis)
    title = f"Growth {'along' if axis == 'x' else 'up'} the panel"
    names = [(0.0, "hook")] if not spans else [(span.start, span.held_by) for span in spans]
    wide = width - SIDE - FAR_SIDE
    is_level = sum(text_width_mm(name, LETTERS) + 3.0 for _, name in names) <= wide + FAR_SIDE
    around = _around(turned, LINE + 3.0 if is_level else max(text_width_mm(name, LETTERS) for _, name in names) + 5.0)
    if not spans:
        return Drawing(title, "no brick", wide, HIGH, around, PLOT, ())
    plot = _Plot(_frame(spans, liner, warmth, wide, turned), spans, liner, warmth, unit)
    points = [point for point in drift.checkpoints if point.axis == axis]
    band = liner.tolerance.inches
    layers = (
        Layer("day", tuple(_envelope(plot))),
        Layer("limits", (*band_ground(plot.frame, band), *side_figures(plot.frame, band, unit))),
        Layer("holding", tuple(_held(plot.frame, names, is_level))),
        Layer("curves", tuple(_curves(plot))),
        Layer("leaving", tuple(_leaving(plot))),
        Layer("below", tuple(tape_strip(plot.frame, spans[-1].end, points, unit))),
    )
    return Drawing(title, "growth over running dimension", wide, HIGH, around, PLOT, layers)


def _around(turned: bool, top: float) -> Margins:
    left, right = (FAR_SIDE, SIDE) if turned else (SIDE, FAR_SIDE)
    return Margins(left=left, right=right, bottom=DEEP, top=top)


def _frame(spans: Sequence[LayingWindow], liner: Liner, warmth: Warmth, wide: float, turned: bool) -> Frame:
    """High enough for every temperature that the slider reaches, so that the plot stands still under it."""
    longest = max(span.end - span.start for span in spans)
    rises = [at - liner.reference_temperature for at in (warmth.least, warmth.most, warmth.at)]
    shown = [0.0, *(growth(longest, liner.expansion_per_degree, rise) for rise in rises)]
    band, reach = liner.tolerance.inches, spans[-1].end
    beyond = 0.16 * (max(*shown, band) - min(*shown, -band))
    low, high = min(min(shown) - beyond / 4, -band - beyond), max(max(shown) + beyond / 4, band + beyond)
    ends = (reach, 0.0) if turned else (0.0, reach)
    return Frame(wide, HIGH, *ends, low, high)


def _envelope(plot: _Plot) -> Iterator[Mark]:
    """What the day's temperatures lie between, span by span."""
    warmth, frame = plot.warmth, plot.frame
    for span in plot.spans:
        ends = [(span.end - span.start) * plot.each(at) for at in (warmth.day_low, warmth.day_high)]
        corners = [(span.start, 0.0), (span.end, ends[0]), (span.end, ends[1])]
        points = np.array([(frame.x(x), frame.y(y)) for x, y in corners])
        yield Areas(points, np.array([3]), "envelope")


def _curves(plot: _Plot) -> Iterator[Mark]:
    warmth, reference = plot.warmth, plot.liner.reference_temperature
    drawn: dict[float, tuple[str, Style]] = {
        reference: ("reference", "rule"),
        warmth.day_low: ("lowest", "tick"),
        warmth.day_high: ("highest", "tick"),
    }
    drawn[warmth.at] = ("", "growth")
    for temperature, (_, style) in drawn.items():
        points = np.array(plot.curve(temperature))
        yield Lines(points, np.array([len(points)]), style)
    last = plot.spans[-1]
    labels: list[tuple[float, str, Style]] = [
        ((last.end - last.start) * plot.each(at), f"{warmth.said(at)} {words}".rstrip(), _lettering(style))
        for at, (words, style) in drawn.items()
    ]
    yield from end_labels(plot.frame, labels)


def _lettering(style: Style) -> Style:
    return "text strong" if style == "growth" else "text"


def _held(frame: Frame, names: Sequence[tuple[float, str]], is_level: bool) -> Iterator[Mark]:
    """Upright lines where something holds the liner, named above the plot."""
    ordered = sorted(names, key=lambda name: frame.x(name[0]))
    yield segments([(frame.x(at), 0.0, frame.x(at), frame.height) for at, _ in ordered], "tick")
    sizes = [text_width_mm(name, LETTERS) + 3.0 if is_level else LINE for _, name in ordered]
    shift = [size / 2 - 1.5 if is_level else 0.0 for size in sizes]
    wanted = [frame.x(at) + frame.away * by for (at, _), by in zip(ordered, shift, strict=True)]
    top = frame.height
    for (at, name), place in zip(ordered, spread(wanted, sizes), strict=True):
        if is_level:
            yield segments([(frame.x(at), top, frame.x(at), top + 2.0)], "tick")
            yield Text(place, top + 2.0 + LINE / 2, name, "text", LETTERS)
        else:
            yield segments([(frame.x(at), top, place, top + 2.4)], "rule")
            yield Text(place, top + 3.2, name, "text", LETTERS, "start", 90)


def _leaving(plot: _Plot) -> Iterator[Mark]:
    """A notch where a curve leaves the band, and in words how far from the hook; the first of each curve at least."""
    warmth = plot.warmth
    rows: dict[bool, int] = {}
    for temperature in dict.fromkeys((warmth.day_high, warmth.day_low, warmth.at)):
        is_long, leaves = plot.each(temperature) > 0, plot.leaves(temperature)
        for at in leaves:
            yield _notch(plot, at, is_long)
        if leaves:
            row = rows.setdefault(is_long, 0)
            rows[is_long] += 1
            yield from _told(plot, temperature, leaves, is_long, row)


def _notch(plot: _Plot, at: float, is_long: bool) -> Mark:
    x = plot.frame.x(at)
    y = plot.frame.y(plot.liner.tolerance.inches * (1 if is_long else -1))
    points = np.array([(x - 1.3, y), (x, y + 1.3), (x + 1.3, y), (x, y - 1.3)])
    return Areas(points, np.array([4]), "missed")


def _told(plot: _Plot, temperature: float, leaves: Sequence[float], is_long: bool, row: int) -> Iterator[Mark]:
    """Before the first notch where there is room, else at the plot's corner over the hook."""
    frame, side = plot.frame, 1 if is_long else -1
    more = f", and in {len(leaves) - 1} more" if len(leaves) > 1 else ""
    first = lettered(leaves[0], plot.unit).removeprefix("≈ ")
    said = plot.warmth.said(temperature)
    words = f"{said}: past the band from {first}{more}"
    if text_width_mm(words, LETTERS) > frame.width - 4.0:
        words = f"{said}: past from {first}"
    x = frame.x(leaves[0])
    if abs(x - frame.near) > text_width_mm(words, LETTERS) + 4.0:
        y = frame.y(plot.liner.tolerance.inches * side) + side * LINE * (row + 0.8)
        yield from boxed(x - frame.away * 2.4, y, words, "text attention", "start" if frame.is_turned else "end")
    else:
        edge = frame.height if is_long else 0.0
        y = edge - side * (1.0 + LINE / 2 + row * LINE)
        yield from boxed(
            frame.near + frame.away * 2.0, y, words, "text attention", "end" if frame.is_turned else "start"
        )
