"""One stack of unpacked sheets that are cut alike, drawn as a sheet lies on the bed: its pockets, the pieces with the
numbers that they are laid as, the waste, and the cuts in words.

A cell's own frame is in inches of sheet with y up; its upper left corner is at 0, 0.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from textwrap import wrap

import numpy as np

from app.drawing.lettering import text_width_mm, with_fractions
from app.drawing.marks import NORMAL, SMALL, Areas, Floats, Mark, Text, line, segments
from app.drawing.rings import areas_of
from app.drawing.scales import Scale
from app.drawing.styles import Style
from app.liner.knife_words import line_words
from app.liner.label_places import roomiest
from app.liner.pockets import Pockets
from app.liner.stack_words import piece_names
from app.liner.told_lines import rest_words, told_lines
from app.liner.work_values import MOST_IN_STACK, KnifeCut, Piece, Stack

HEAD_MM, LINE_MM, GAP_MM = 6.0, 3.6, 3.0
"""Room for the line over a drawing, for a line of words over or under it, and between it and the words, mm."""

WIDE_MM = 78.0
"""Least width of a cell, so that a cut's words fit, mm."""

TICK_MM = 1.4
"""Length of the tick across a cut where it crosses a ridge, mm."""

BESIDE_MM = 2.0
"""How far beyond the sheet's side a number stands, mm."""


@dataclass(frozen=True, slots=True)
class StackCell:
    """A stack with the pockets of its sheet; `flips` say which way round it lies on the bed: 1 or -1 across and up.

    `kind` names the sheet's bond where the panel has several.
    """

    stack: Stack
    pockets: Pockets
    flips: tuple[int, int]
    scale: Scale
    unit: str
    kind: str

    def mm(self, paper: float) -> float:
        """Inches of sheet under so many millimetres of paper."""
        return paper * self.scale.inches_per_mm

    @property
    def sheet_size(self) -> tuple[float, float]:
        """Width and height of the sheet, inches."""
        wide, high = self.pockets.outline.max(axis=0).tolist()
        return wide, high

    @property
    def above(self) -> float:
        """From the cell's top to the sheet's, inches."""
        return self.mm(HEAD_MM + len(self.laid) * LINE_MM + 2 * BESIDE_MM)

    @property
    def size(self) -> tuple[float, float]:
        """Width and height of all that is drawn, inches."""
        wide, high = self.sheet_size
        under = self.mm(GAP_MM + BESIDE_MM + len(self.lines) * LINE_MM)
        return max(wide + self.mm(5 * BESIDE_MM), self.mm(WIDE_MM)), self.above + high + under

    @property
    def lines(self) -> list[str]:
        """The cuts in words, each on as many lines as it needs."""
        return self._wrapped(_cut_words(self))

    @property
    def laid(self) -> list[str]:
        """As which sheets the pieces are laid, on as many lines as it needs."""
        if len(self.stack.pieces) == 1:
            return self._wrapped([_sheets(self.stack.pieces[0])])
        if self.stack.count == 1:
            return self._wrapped([f"sheets {', '.join(map(str, self.stack.sheets))}"])
        rows = zip(piece_names(self.stack), self.stack.pieces, strict=True)
        return self._wrapped(f"{name}: {_sheets(piece)}" for name, piece in rows)

    def _wrapped(self, rows: Iterable[str]) -> list[str]:
        letters = int(max(WIDE_MM, self.sheet_size[0] / self.mm(1)) / text_width_mm("n", SMALL))
        return [with_fractions(part) for row in rows for part in wrap(row, letters, subsequent_indent="\u2003")]

    def placed(self, points: Floats) -> Floats:
        """Points from the starting corner, where they lie in the cell."""
        wide, high = self.sheet_size
        flipped = np.where(self.flips[0] > 0, points[..., 0], wide - points[..., 0])
        up = np.where(self.flips[1] > 0, points[..., 1] - high, -points[..., 1])
        placed: Floats = np.stack([flipped, up - self.above], axis=-1)
        return placed


def _sheets(piece: Piece) -> str:
    return f"sheet{'s' * (len(piece.numbers) > 1)} {', '.join(map(str, piece.numbers))}"


def stack_waste(cell: StackCell) -> Iterator[Mark]:
    """The whole sheet less its pieces, crossed out."""
    rings = (np.array(ring) for piece in cell.stack.pieces for ring in piece.rings)
    yield _rings(cell, [cell.pockets.outline, *rings], "sheet waste")


def stack_pockets(cell: StackCell) -> Iterator[Mark]:
    """The pockets, pale, the sheet's whole outline, and that of each piece."""
    yield _rings(cell, cell.pockets.corners, "pocket")
    yield _rings(cell, [cell.pockets.outline], "sheet")
    yield _rings(cell, [np.array(ring) for piece in cell.stack.pieces for ring in piece.rings], "rule")


def _rings(cell: StackCell, rings: Iterable[Floats], style: Style) -> Areas:
    return areas_of([cell.placed(ring) for ring in rings], style)


def stack_cuts(cell: StackCell) -> Iterator[Mark]:
    """Each cut bold, and a tick at each ridge that it crosses."""
    ends = [_ends(cell, knife).ravel().tolist() for knife in cell.stack.cuts]
    yield segments([(x0, y0, x1, y1) for x0, y0, x1, y1 in ends], "knife")
    yield segments([tick for knife in cell.stack.cuts for tick in _ticks(cell, knife)], "tick")


def _ends(cell: StackCell, knife: KnifeCut) -> Floats:
    return cell.placed(np.array([knife.cut.start, knife.cut.end]))


def _ticks(cell: StackCell, knife: KnifeCut) -> Iterator[tuple[float, float, float, float]]:
    start, end = _ends(cell, knife)
    along = (end - start) / max(knife.length, 1e-9)
    across = np.array([-along[1], along[0]]) * cell.mm(TICK_MM / 2)
    for ridge in knife.ridges:
        x, y = (start + along * ridge).tolist()
        yield x - across[0], y - across[1], x + across[0], y + across[1]


def stack_numbers(cell: StackCell) -> Iterator[Mark]:
    """What each piece is laid as, on it, and the number of each cut, of teeth and of an arc beside it."""
    taken: list[tuple[float, float, float, float]] = []
    for name, piece in zip(piece_names(cell.stack), cell.stack.pieces, strict=True):
        yield from _on_piece(cell, name, piece, taken)
    if len(cell.stack.lines) > 1:
        for number, told in told_lines(cell.stack):
            yield _at_cut(cell, str(number), told.middle, taken)


def _on_piece(
    cell: StackCell, name: str, piece: Piece, taken: list[tuple[float, float, float, float]]
) -> Iterator[Mark]:
    """On every part that has room, upright in a narrow one; beside the sheet on a line where not even one has."""
    for k, (x, y, room) in enumerate(roomiest(piece.rings) if name else ()):
        ((at_x, at_y),) = cell.placed(np.array([[x, y]])).tolist()
        size = NORMAL if room > cell.mm(NORMAL) else SMALL
        is_narrow = 2 * room < cell.mm(text_width_mm(name, size))
        wide, high = np.ptp(np.array(max(piece.rings, key=len)), axis=0).tolist()
        if 2 * room >= cell.mm(SMALL):
            text = Text(at_x, at_y, name, "text sheet", size, angle=90.0 if is_narrow and wide < high else 0.0)
            taken.append(_box(cell, text))
            yield text
        elif k == 0:
            yield from _on_leader(cell, name, (at_x, at_y), taken)


def _on_leader(
    cell: StackCell, name: str, at: tuple[float, float], taken: list[tuple[float, float, float, float]]
) -> Iterator[Mark]:
    """At the sheet's right, below the last one that stands there."""
    x, y = cell.sheet_size[0] + cell.mm(BESIDE_MM), at[1]
    while not _is_free(box := _box(cell, Text(x, y, name, "text sheet", SMALL, "start")), taken):
        y -= cell.mm(SMALL / 2)
    taken.append(box)
    yield line([at, (x - cell.mm(0.4), y)], "rule")
    yield Text(x, y, name, "text sheet", SMALL, "start")


def _at_cut(cell: StackCell, number: str, knife: KnifeCut, taken: list[tuple[float, float, float, float]]) -> Text:
    """Beyond either end of the cut, or on it, where nothing stands; its middle if something stands everywhere."""
    start, end = _ends(cell, knife)
    along = (end - start) / max(knife.length, 1e-9)
    beyond = along * cell.mm(BESIDE_MM)
    places = [start - beyond, end + beyond, *(start + (end - start) * share for share in (0.5, 0.3, 0.7, 0.2, 0.8))]
    wide, high = cell.sheet_size
    outside = [p for p in places[:2] if not (0 <= p[0] <= wide and 0 <= -p[1] - cell.above <= high)]
    texts = [Text(float(x), float(y), number, "cut letter", SMALL) for x, y in (*outside, *places[2:])]
    text = next((text for text in texts if _is_free(_box(cell, text), taken)), texts[len(outside)])
    taken.append(_box(cell, text))
    return text


def _box(cell: StackCell, text: Text) -> tuple[float, float, float, float]:
    long, half = cell.mm(text_width_mm(text.text, text.size_mm)), cell.mm(0.42 * text.size_mm)
    left = 0.0 if text.anchor == "start" else -long / 2
    if text.angle:
        return text.x - half, text.y + left, text.x + half, text.y + left + long
    return text.x + left, text.y - half, text.x + left + long, text.y + half


def _is_free(one: tuple[float, ...], taken: list[tuple[float, float, float, float]]) -> bool:
    return not any(one[0] < b[2] and b[0] < one[2] and one[1] < b[3] and b[1] < one[3] for b in taken)


def stack_words(cell: StackCell) -> Iterator[Mark]:
    """The stack's letter, how many and as which sheets they are laid, over the drawing; its cuts under it."""
    stack, under = cell.stack, cell.above + cell.sheet_size[1] + cell.mm(GAP_MM + BESIDE_MM)
    passes = f", {stack.passes} passes of up to {MOST_IN_STACK}" if stack.passes > 1 else ""
    kind = f", {cell.kind}" if cell.kind else ""
    head = f"{stack.mark} x {stack.count}{kind}{passes}"
    yield Text(0, -cell.mm(HEAD_MM / 2), head, "text strong", NORMAL, "start")
    for k, words in enumerate(cell.laid):
        yield Text(0, -cell.mm(HEAD_MM + (k + 0.5) * LINE_MM), words, "text sheet", SMALL, "start")
    for k, words in enumerate(cell.lines):
        yield Text(0, -under - cell.mm((k + 0.5) * LINE_MM), words, "text", SMALL, "start")


def _cut_words(cell: StackCell) -> Iterator[str]:
    for number, told in told_lines(cell.stack):
        words = line_words(told, cell.unit)
        yield f"{number}: {words}" if len(cell.stack.lines) > 1 else words
    if rest := rest_words(cell.stack):
        yield rest
