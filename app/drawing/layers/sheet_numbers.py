"""The number of each liner sheet in laying order, on a ground of its own."""

from collections.abc import Iterator

import numpy as np

from app.drawing.board import Board, text_box
from app.drawing.marks import NORMAL, SMALL, Boxes, Mark, Text
from app.drawing.scene import Scene
from app.liner.label_places import label_places
from app.liner.values import Sheet

FRAME = "face"

SHIFTS = ((0, 0), (0, 1), (0, -1), (1, 0), (-1, 0), (1, 1), (-1, -1), (1, -1), (-1, 1))
"""Where a number goes when another stands in its place, in its own widths and heights."""


def marks(scene: Scene) -> Iterator[Mark]:
    """The grounds as one mark, then the numbers; none without a plan or sheets."""
    if scene.plan is None or not scene.plan.sheets:
        return
    found = numbers(scene)
    boxes = np.array([text_box(scene, number) for number in found])
    yield Boxes(boxes[:, 0], boxes[:, 1], boxes[:, 2] - boxes[:, 0], boxes[:, 3] - boxes[:, 1], "label")
    yield from found


def numbers(scene: Scene) -> list[Text]:
    """The number of each sheet where it stands; none without a plan."""
    sheets = scene.plan.sheets if scene.plan else ()
    board = Board(scene.mm(10))
    rows = zip(sheets, label_places(sheets).tolist(), strict=True)
    return [_number(scene, board, sheet, x, y) for sheet, (x, y) in rows]


def _number(scene: Scene, board: Board, sheet: Sheet, x: float, y: float) -> Text:
    size = NORMAL if sheet.area > scene.mm(12) * scene.mm(6) else SMALL
    number = Text(x, y, sheet.mark, "text sheet", size)
    left, low, right, high = text_box(scene, number)
    for across, rise in SHIFTS:
        dx, dy = across * (right - left), rise * (high - low)
        if board.took((left + dx, low + dy, right + dx, high + dy)):
            return Text(x + dx, y + dy, sheet.mark, "text sheet", size)
    return number
