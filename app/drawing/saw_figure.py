"""Small figures of the saw station: a brick at true scale with its measures and words, to be set side by side."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from app.drawing.declutter import spread
from app.drawing.drawing import Drawing
from app.drawing.lettering import lettered, text_width_mm
from app.drawing.marks import SMALL, Layer, Mark, Text, box, line, segments
from app.drawing.moved import moved
from app.drawing.scales import Margins, Scale
from app.drawing.styles import Style
from app.lengths.format import OFF_GRID

TICK_MM, LABEL_MM, APART_MM, LINE_MM = 1.6, 3.4, 3.1, 3.7
"""A measure's tick, from the brick to its label, room of a label up the side, and one line of words, mm."""

SIDE_MM, MEASURED_MM, BARE_MM = 14.0, 6.0, 2.4
"""Room at a brick's ends, and above and below it with measures and without, mm."""

OVER_MM = 1.2
"""How far the mark of a factory end stands out over the brick, mm."""


@dataclass(frozen=True, slots=True)
class Pen:
    """The scale and unit that figures are drawn in."""

    scale: Scale
    unit: str

    def mm(self, paper: float) -> float:
        """Inches of brick under so many millimetres of paper."""
        return paper * self.scale.inches_per_mm

    def words(self, inches: float) -> str:
        """A length as lettered."""
        return lettered(inches, self.unit)


@dataclass(frozen=True, slots=True)
class Figure:
    """Marks from a lower-left corner at 0, 0, and the room they take, inches."""

    marks: tuple[Mark, ...]
    width: float
    height: float


def framed(
    pen: Pen,
    brick: tuple[float, float],
    inside: Sequence[Mark],
    words: Sequence[tuple[str, Style]],
    is_measured_above: bool = False,
) -> Figure:
    """A brick's marks, its lower-left corner at 0, 0, with room around them, and lines of words above."""
    side, below = pen.mm(SIDE_MM), pen.mm(MEASURED_MM)
    above = pen.mm(MEASURED_MM if is_measured_above else BARE_MM)
    width = max(brick[0] + 2 * side, *(pen.mm(text_width_mm(text, SMALL)) for text, _ in words))
    height = below + brick[1] + above + len(words) * pen.mm(LINE_MM)
    lines = tuple(
        Text(0.0, height - (k + 0.5) * pen.mm(LINE_MM), text, style, SMALL, "start")
        for k, (text, style) in enumerate(words)
    )
    return Figure((*lines, *(moved(mark, side, below) for mark in inside)), width, height)


def as_drawing(figure: Figure, pen: Pen, title: str, words: str) -> Drawing:
    """One figure by itself, for a page that sets figures out by its own rules."""
    edge = Margins(1.0, 1.0, 1.0, 1.0)
    return Drawing(title, words, figure.width, figure.height, edge, pen.scale, (Layer("saw", figure.marks),))


def rim(brick: tuple[float, float]) -> Mark:
    """The whole brick's edge, thin."""
    length, height = brick
    return line([(0, 0), (length, 0), (length, height), (0, height), (0, 0)], "rule")


def factory_end(pen: Pen, x: float, height: float, is_left: bool) -> Iterator[Mark]:
    """An end that stays as the maker left it: heavy and standing out over the brick, with its letter beside it."""
    over = pen.mm(OVER_MM)
    yield line([(x, -over), (x, height + over)], "outline")
    yield Text(
        x + pen.mm(-1.2 if is_left else 1.2), height / 2, "F", "text strong", SMALL, "end" if is_left else "start"
    )


def distinct(pen: Pen, at: Sequence[float]) -> list[float]:
    """Places in order, one of those that read the same; one that is on the step before one that is only near it."""
    by_words = dict[str, float]()
    for place in sorted(at, key=lambda place: (pen.words(place).startswith(OFF_GRID), place)):
        by_words.setdefault(pen.words(place).removeprefix(OFF_GRID), place)
    return sorted(by_words.values())


def along(pen: Pen, at: Sequence[float], edge: float, is_above: bool = False) -> Iterator[Mark]:
    """Measures from the brick's left end to places on its lower or upper edge."""
    out = 1 if is_above else -1
    places = distinct(pen, at)
    labels = [pen.words(place) for place in places]
    middles = spread(places, [pen.mm(text_width_mm(text, SMALL) + 1.5) for text in labels])
    tick, foot = edge + out * pen.mm(TICK_MM), edge + out * pen.mm(TICK_MM + 0.6)
    ends = [(x, edge, x, tick) for x in places] + [(x, tick, m, foot) for x, m in zip(places, middles, strict=True)]
    if places:
        yield segments(ends, "rule")
    for text, middle in zip(labels, middles, strict=True):
        yield Text(middle, edge + out * pen.mm(LABEL_MM + 0.6), text, "text", SMALL)


def upright(pen: Pen, at: Sequence[float], edge: float, is_right: bool = False) -> Iterator[Mark]:
    """Measures from the brick's lower edge to places on its left or right end."""
    out = 1 if is_right else -1
    places = distinct(pen, at)
    middles = spread(places, [pen.mm(APART_MM)] * len(places))
    tick, foot = edge + out * pen.mm(TICK_MM), edge + out * pen.mm(TICK_MM + 0.6)
    ends = [(edge, y, tick, y) for y in places] + [(tick, y, foot, m) for y, m in zip(places, middles, strict=True)]
    if places:
        yield segments(ends, "rule")
    for place, middle in zip(places, middles, strict=True):
        x = edge + out * pen.mm(TICK_MM + 1.2)
        yield Text(x, middle, pen.words(place), "text", SMALL, "start" if is_right else "end")


def spans(pen: Pen, runs: Sequence[tuple[float, float, str]]) -> Iterator[Mark]:
    """Lengths under the brick, each between its own ticks; `runs` are from, to, words."""
    if not runs:
        return
    level, tick = -pen.mm(2.4), pen.mm(0.8)
    ends = [(x0, level, x1, level) for x0, x1, _ in runs]
    ends += [(x, level - tick, x, level + tick) for run in runs for x in run[:2]]
    yield segments(ends, "rule")
    middles = spread([(x0 + x1) / 2 for x0, x1, _ in runs], [pen.mm(text_width_mm(run[2], SMALL) + 1) for run in runs])
    for (_, _, text), middle in zip(runs, middles, strict=True):
        yield Text(middle, -pen.mm(4.9), text, "text", SMALL)


def shown(x: float, y: float, width: float, height: float, style: Style) -> Iterator[Mark]:
    """A box, none where it has no width."""
    if width > 0:
        yield box(x, y, width, height, style)
