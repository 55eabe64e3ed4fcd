"""The ground of a plot: values to millimetres of paper, the band with hatching beyond it, figures at the side.

A plot is drawn at full size (`PLOT`), so its marks stand in millimetres instead of inches of panel.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import ceil, floor

from app.drawing.declutter import spread
from app.drawing.lettering import lettered, text_width_mm
from app.drawing.marks import Anchor, Mark, Text, box, line, segments
from app.drawing.scales import MM_PER_INCH, Scale
from app.drawing.styles import Style

PLOT = Scale(MM_PER_INCH, "plot")
"""One unit of a drawing to a millimetre of paper."""

LETTERS = 3.2
"""Lettering height, mm: reads from 3.4 screen pixels to a millimetre up."""

LINE = 4.2
"""From one line of lettering to the next, mm."""

HATCH = 3.0
"""Distance of hatch lines along the side of what they fill, mm."""

MOST_FIGURES = 8

STEPS = {
    "in": (1 / 16, 1 / 8, 1 / 4, 1 / 2, 1.0, 2.0, 6.0, 12.0, 60.0),
    "mm": tuple(mm / MM_PER_INCH for mm in (1, 2, 5, 10, 20, 50, 100, 500)),
}
"""Growth from one figure at the side to the next, inches."""

Rect = tuple[float, float, float, float]


@dataclass(frozen=True, slots=True)
class Frame:
    """A plot's rectangle, `width` x `height` mm; `low_x` stands at its left edge, `low_y` at its foot.

    `low_x` above `high_x` makes the plot run from right to left.
    """

    width: float
    height: float
    low_x: float
    high_x: float
    low_y: float
    high_y: float

    def x(self, value: float) -> float:
        return (value - self.low_x) / (self.high_x - self.low_x) * self.width

    def y(self, value: float) -> float:
        return (value - self.low_y) / (self.high_y - self.low_y) * self.height

    @property
    def is_turned(self) -> bool:
        """Whether it runs from right to left."""
        return self.low_x > self.high_x

    @property
    def away(self) -> int:
        """Which way values rise on paper: 1 to the right, -1 to the left."""
        return -1 if self.is_turned else 1

    @property
    def near(self) -> float:
        """The edge where values start, mm."""
        return self.width if self.is_turned else 0.0


def hatched(rect: Rect, style: Style = "beyond") -> Iterator[Mark]:
    """Slanted lines over a rectangle x, y, width, height; none for one without height."""
    x0, y0, width, height = rect
    if width <= 0 or height <= 0:
        return
    ends = []
    for k in range(1, ceil((width + height) / HATCH)):
        along = k * HATCH
        start, end = max(0.0, along - height), min(along, width)
        ends.append((x0 + start, y0 + along - start, x0 + end, y0 + along - end))
    yield segments(ends, style)


def band_ground(frame: Frame, band: float) -> Iterator[Mark]:
    """Hatching beyond the band on both sides, the band's two lines, the line of no growth, and the frame."""
    upper, lower = frame.y(band), frame.y(-band)
    yield from hatched((0.0, upper, frame.width, frame.height - upper))
    yield from hatched((0.0, 0.0, frame.width, lower))
    yield segments([(0.0, at, frame.width, at) for at in (lower, upper)], "band")
    yield segments([(0.0, frame.y(0.0), frame.width, frame.y(0.0))], "rule")
    corners = [(0.0, 0.0), (frame.width, 0.0), (frame.width, frame.height), (0.0, frame.height), (0.0, 0.0)]
    yield line(corners, "rule")


def side_figures(frame: Frame, band: float, unit: str) -> Iterator[Mark]:
    """Growth in figures at the edge where values start, the band's own always."""
    step = next((step for step in STEPS[unit] if (frame.high_y - frame.low_y) / step <= MOST_FIGURES), STEPS[unit][-1])
    at = [k * step for k in range(ceil(frame.low_y / step), floor(frame.high_y / step) + 1)]
    clear = LINE / frame.height * (frame.high_y - frame.low_y)
    figures: list[tuple[float, Style]] = [(band, "text strong"), (-band, "text strong")]
    figures += [(value, "text quiet") for value in at if min(abs(value - band), abs(value + band)) > clear]
    out = -frame.away * 1.6
    for value, style in figures:
        y = frame.y(value)
        yield segments([(frame.near, y, frame.near + out / 2, y)], "rule")
        yield Text(frame.near + out, y, signed(value, unit), style, LETTERS, "start" if frame.is_turned else "end")


def signed(value: float, unit: str) -> str:
    """A growth as `+1/8"`, `0` or a length with a minus."""
    if abs(value) < 1e-9:
        return "0"
    return f"{'+' if value > 0 else chr(0x2212)}{lettered(abs(value), unit).removeprefix('≈ ')}"


def boxed(x: float, y: float, words: str, style: Style, anchor: Anchor = "start") -> Iterator[Mark]:
    """Words on a ground of their own, so that they read over hatching and lines; `anchor` is "start" or "end"."""
    wide = text_width_mm(words, LETTERS)
    left = x if anchor == "start" else x - wide
    yield box(left - 0.6, y - LINE / 2, wide + 1.2, LINE, "label")
    yield Text(x, y, words, style, LETTERS, anchor)


def end_labels(frame: Frame, labels: Sequence[tuple[float, str, Style]]) -> Iterator[Mark]:
    """Words beside the ends of curves at the far edge, moved apart where they crowd, each with a leader."""
    ordered = sorted(labels, key=lambda label: label[0])
    places = spread([frame.y(value) for value, _, _ in ordered], [LINE] * len(ordered))
    far, away = frame.width - frame.near, frame.away
    for (value, words, style), place in zip(ordered, places, strict=True):
        yield segments([(far, frame.y(value), far + away * 2.4, place)], "rule")
        yield Text(far + away * 3.2, place, words, style, LETTERS, "end" if frame.is_turned else "start")
