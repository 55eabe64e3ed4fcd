"""Where lettering stands already, so that the next does not stand on it."""

from collections.abc import Iterable
from itertools import product

from app.drawing.lettering import text_width_mm
from app.drawing.marks import Text
from app.drawing.scene import Scene

Box = tuple[float, float, float, float]
"""Left, lower, right, upper, inches."""


class Board:
    """Boxes taken on a drawing, kept by cells of `cell` inches."""

    def __init__(self, cell: float, taken: Iterable[Box] = ()) -> None:
        self._cell = cell
        self._boxes: dict[tuple[int, int], list[Box]] = {}
        for box in taken:
            self.take(box)

    def take(self, box: Box) -> None:
        """Mark a box as taken."""
        for cell in self._cells(box):
            self._boxes.setdefault(cell, []).append(box)

    def is_free(self, box: Box) -> bool:
        """Whether nothing taken overlaps the box."""
        return not any(_overlap(box, other) for cell in self._cells(box) for other in self._boxes.get(cell, ()))

    def took(self, box: Box) -> bool:
        """Take the box if it is free, and say whether it was."""
        if not self.is_free(box):
            return False
        self.take(box)
        return True

    def _cells(self, box: Box) -> Iterable[tuple[int, int]]:
        left, low, right, high = (int(side // self._cell) for side in box)
        return product(range(left, right + 1), range(low, high + 1))


def _overlap(one: Box, other: Box) -> bool:
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]


def text_box(scene: Scene, text: Text) -> Box:
    """About the box of a level text, with a little air above and below."""
    inches = scene.scale.inches_per_mm
    wide, half = text_width_mm(text.text, text.size_mm) * inches, 0.55 * text.size_mm * inches
    left = text.x - (wide / 2 if text.anchor == "middle" else wide if text.anchor == "end" else 0.0)
    return left, text.y - half, left + wide, text.y + half
