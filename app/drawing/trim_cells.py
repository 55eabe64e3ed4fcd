"""One stack of equal trims, drawn as it lies on the bed: the sheet, its pockets, what is cut, and the cuts in words.

A cell's own frame is in inches of sheet with y up; its upper left corner is at 0, 0.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from math import hypot
from textwrap import wrap

import numpy as np

from app.drawing.lettering import fitting, text_width_mm, with_fractions
from app.drawing.marks import NORMAL, SMALL, Areas, Floats, Mark, Text, segments
from app.drawing.rings import areas_of
from app.drawing.scales import Scale
from app.drawing.styles import Style
from app.liner.knife import knife_words
from app.liner.pockets import Pockets
from app.liner.work_values import MOST_IN_STACK, KnifeCut, Stack

HEAD_MM, LINE_MM, GAP_MM = 11.0, 3.6, 3.0
"""Room for the two lines over a drawing, for a line of words under it, and between the two, mm."""

MOST_WORDS = 8
"""Cuts told in words; of more, as along a curve, the longest."""

WIDE_MM = 78.0
"""Least width of a cell, so that a cut's words fit, mm."""

TICK_MM = 1.4
"""Length of the tick across a cut where it crosses a ridge, mm."""


@dataclass(frozen=True, slots=True)
class TrimCell:
    """A stack with the pockets of its sheet; `flips` say which way round it lies on the bed: 1 or -1 across and up."""

    stack: Stack
    pockets: Pockets
    flips: tuple[int, int]
    scale: Scale
    unit: str

    def mm(self, paper: float) -> float:
        """Inches of sheet under so many millimetres of paper."""
        return paper * self.scale.inches_per_mm

    @property
    def told(self) -> list[tuple[int, KnifeCut]]:
        """The cuts that are told in words, by their numbers."""
        longest = sorted(enumerate(self.stack.cuts, start=1), key=lambda cut: -_length(cut[1]))
        return sorted(longest[:MOST_WORDS], key=lambda cut: cut[0])

    @property
    def size(self) -> tuple[float, float]:
        """Width and height of all that is drawn, inches."""
        wide, high = self.pockets.outline.max(axis=0).tolist()
        return max(wide, self.mm(WIDE_MM)), high + self.mm(HEAD_MM + GAP_MM + len(self.lines) * LINE_MM)

    @property
    def lines(self) -> list[str]:
        """The cuts in words, each on as many lines as it needs."""
        letters = int(max(WIDE_MM, float(self.pockets.outline[:, 0].max()) / self.mm(1)) / text_width_mm("n", SMALL))
        lines = [line for words in _cut_words(self) for line in wrap(words, letters, subsequent_indent="\u2003")]
        return [with_fractions(line) for line in lines]

    def placed(self, points: Floats) -> Floats:
        """Points from the starting corner, where they lie in the cell."""
        wide, high = self.pockets.outline.max(axis=0)
        flipped = np.where(self.flips[0] > 0, points[..., 0], wide - points[..., 0])
        up = np.where(self.flips[1] > 0, points[..., 1] - high, -points[..., 1])
        placed: Floats = np.stack([flipped, up - self.mm(HEAD_MM)], axis=-1)
        return placed


def _length(knife: KnifeCut) -> float:
    return hypot(*(b - a for a, b in zip(knife.cut.start, knife.cut.end, strict=True)))


def trim_grounds(cell: TrimCell) -> Iterator[Mark]:
    """What is left of the sheet, then its pockets, pale, and its whole outline."""
    yield _rings(cell, map(np.array, cell.stack.rings), "sheet trimmed")
    yield _rings(cell, cell.pockets.corners, "pocket")
    yield _rings(cell, [cell.pockets.outline], "sheet")


def _rings(cell: TrimCell, rings: Iterable[Floats], style: Style) -> Areas:
    return areas_of([cell.placed(ring) for ring in rings], style)


def trim_cuts(cell: TrimCell) -> Iterator[Mark]:
    """Each cut bold, a tick at each ridge it crosses, its number beside it."""
    ends = [cell.placed(np.array([knife.cut.start, knife.cut.end])) for knife in cell.stack.cuts]
    yield segments([(x0, y0, x1, y1) for (x0, y0), (x1, y1) in (end.tolist() for end in ends)], "knife")
    yield segments([tick for knife in cell.stack.cuts for tick in _ticks(cell, knife)], "tick")
    told = {number for number, _ in cell.told}
    for number, (start, end) in enumerate(ends, start=1):
        if number in told and len(cell.stack.cuts) > 1:
            x, y = ((start + end) / 2).tolist()
            yield Text(x, y, str(number), "cut letter", SMALL)


def _ticks(cell: TrimCell, knife: KnifeCut) -> Iterator[tuple[float, float, float, float]]:
    start, end = cell.placed(np.array([knife.cut.start, knife.cut.end]))
    along = (end - start) / max(_length(knife), 1e-9)
    across = np.array([-along[1], along[0]]) * cell.mm(TICK_MM / 2)
    for ridge in knife.ridges:
        x, y = (start + along * ridge).tolist()
        yield x - across[0], y - across[1], x + across[0], y + across[1]


def trim_words(cell: TrimCell) -> Iterator[Mark]:
    """The stack's letter, how many and which sheets, over the drawing; its cuts under it."""
    stack, room = cell.stack, cell.size[0] / cell.mm(1)
    high = float(cell.pockets.outline[:, 1].max()) + cell.mm(HEAD_MM + GAP_MM)
    passes = f"{stack.passes} passes of up to {MOST_IN_STACK}" if stack.passes > 1 else "one pass"
    each = f" x {stack.count}, {passes}" if stack.count > 1 else " x 1"
    yield Text(0, -cell.mm(2.2), f"{stack.mark}{each}", "text strong", NORMAL, "start")
    sheets = ("sheet " if stack.count == 1 else "sheets ") + ", ".join(map(str, stack.sheets))
    yield Text(0, -cell.mm(6.8), fitting(sheets, room, SMALL), "text sheet", SMALL, "start")
    for k, words in enumerate(cell.lines):
        yield Text(0, -high - cell.mm((k + 0.5) * LINE_MM), words, "text", SMALL, "start")


def _cut_words(cell: TrimCell) -> Iterator[str]:
    told, cuts = cell.told, cell.stack.cuts
    for number, knife in told:
        words = knife_words(knife, cell.unit)
        yield f"{number}: {words}" if len(cuts) > 1 else words
    if len(cuts) > len(told):
        yield f"and {len(cuts) - len(told)} shorter ones: follow the line"
