"""The number of each liner sheet in laying order, on a ground of its own, room left for the letter of its stack."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import product

import numpy as np

from app.drawing.board import Board, Box
from app.drawing.lettering import text_width_mm
from app.drawing.marks import NORMAL, SMALL, Boxes, Floats, Mark, Text, segments
from app.drawing.scene import Scene
from app.drawing.styles import Style
from app.liner.label_places import label_places, lie_on

FRAME = "face"

AROUND = tuple(
    (across * far, rise * far)
    for far in (1.0, 1.6, 2.4, 3.4)
    for across, rise in product((1, -1, 0), repeat=2)
    if across or rise
)
"""Where a number goes that has no room on its sheet, in half its width and 1.5 of its height and so on; a line leads
back to the sheet."""


WAYS = ((NORMAL, False), (SMALL, False), (SMALL, True))
"""Sizes in mm and whether a number stands upright: what is tried first on a sheet."""

_LEVEL = 1
"""Of these, how a number stands beside its sheet."""

CLEAR_MM, AIR_MM = 0.8, 0.6
"""From a number to its letter, and from either to the end of their ground, mm."""


@dataclass(frozen=True, slots=True)
class Label:
    """A number where it stands, the letter of its stack beside it, and the box of both; `at` is the sheet's own place,
    to which a line leads where `is_away`."""

    number: Text
    letter: Text | None
    box: Box
    at: tuple[float, float]
    is_away: bool


def marks(scene: Scene) -> Iterator[Mark]:
    """Lines to sheets without room, the grounds as one mark, then the numbers; none without a plan or sheets."""
    if scene.plan is None or not scene.plan.sheets:
        return
    found = labels(scene)
    away = [label for label in found if label.is_away]
    if away:
        yield segments([(*label.at, label.number.x, label.number.y) for label in away], "rule")
    boxes = np.array([label.box for label in found])
    yield Boxes(boxes[:, 0], boxes[:, 1], boxes[:, 2] - boxes[:, 0], boxes[:, 3] - boxes[:, 1], "label")
    yield from (label.number for label in found)


def labels(scene: Scene) -> list[Label]:
    """The number of each sheet: level on it, else upright, else beside it; none over another, none without a plan."""
    sheets = scene.plan.sheets if scene.plan else ()
    stacks = scene.work.stacks if scene.work else ()
    letter = {number: stack.mark for stack in stacks for number in stack.sheets}
    words = [(sheet.mark, letter.get(sheet.number, "")) for sheet in sheets]
    at = label_places(sheets)
    boxes = np.array([_boxes(scene, words, at, *way) for way in WAYS])
    fits = lie_on(sheets, boxes)
    board, chosen = Board(scene.mm(10)), dict[int, tuple[int, Box, bool]]()
    for way, k in np.argwhere(fits).tolist():
        if k not in chosen and board.took(box := tuple(boxes[way, k].tolist())):
            chosen[k] = way, box, False
    for k in sorted(range(len(sheets)), key=lambda k: sheets[k].area):
        if k not in chosen:
            chosen[k] = _LEVEL, *_beside(board, tuple(boxes[_LEVEL, k].tolist()), (scene.width, scene.height))
    return [_label(scene, words[k], tuple(at[k].tolist()), *chosen[k]) for k in range(len(sheets))]


def _boxes(scene: Scene, words: Sequence[tuple[str, str]], at: Floats, size: float, is_upright: bool) -> Floats:
    """The box of each number with its letter, shape (sheets, 4), inches."""
    air = scene.mm(AIR_MM)
    long = np.array([sum(_lengths(scene, number, letter, size)) / 2 + air for number, letter in words])
    high = np.full(len(words), scene.mm(0.55 * size))
    half = np.column_stack([high, long] if is_upright else [long, high])
    return np.hstack([at - half, at + half])


def _lengths(scene: Scene, number: str, letter: str, size: float) -> tuple[float, float]:
    """Of the number, and of the letter with what is left free before it, inches."""
    more = text_width_mm(letter, SMALL) + CLEAR_MM if letter else 0.0
    return scene.mm(text_width_mm(number, size)), scene.mm(more)


def _label(scene: Scene, words: tuple[str, str], at: tuple[float, float], way: int, box: Box, is_away: bool) -> Label:
    """A letter stands after its number as it is read: on the bed the face's right is left."""
    (size, is_upright), turn = WAYS[way], -1 if scene.frame == "bed" else 1
    wide, more = _lengths(scene, *words, size)
    x, y = (box[0] + box[2]) / 2, (box[1] + box[3]) / 2

    def text(said: str, along: float, style: Style, size_mm: float) -> Text:
        if is_upright:
            return Text(x, y + along, said, style, size_mm, angle=90.0 * turn)
        return Text(x + along * turn, y, said, style, size_mm)

    number = text(words[0], -more / 2, "text sheet", size)
    letter = text(words[1], (wide + scene.mm(CLEAR_MM)) / 2, "text", SMALL) if words[1] else None
    return Label(number, letter, box, at, is_away)


def _beside(board: Board, box: Box, panel: tuple[float, float]) -> tuple[Box, bool]:
    """The first free place around the sheet's own, on the panel where there is one; else over another."""
    left, low, right, high = box
    moves = [(across * (right - left) * 0.75, rise * (high - low) * 1.5) for across, rise in AROUND]
    places = [(left + dx, low + dy, right + dx, high + dy) for dx, dy in moves]
    places.sort(key=lambda place: not _is_on(place, panel))
    found = next(filter(board.took, places), None)
    return (box, False) if found is None else (found, True)


def _is_on(box: Box, panel: tuple[float, float]) -> bool:
    return box[0] >= 0 and box[1] >= 0 and box[2] <= panel[0] and box[3] <= panel[1]
