"""Beside the number of each trimmed sheet the letter of the stack it is cut in."""

from collections.abc import Iterator

from app.drawing.board import text_box
from app.drawing.layers.sheet_numbers import numbers
from app.drawing.marks import SMALL, Mark, Text
from app.drawing.scene import Scene

FRAME = "face"

CLEAR_MM = 0.6
"""From the letter to the number, mm."""


def marks(scene: Scene) -> Iterator[Mark]:
    """One letter a trimmed sheet, at the left of its number (on the bed, right); none where nobody worked them out."""
    if scene.plan is None or scene.work is None:
        return
    letter = {number: stack.mark for stack in scene.work.stacks for number in stack.sheets}
    for sheet, number in zip(scene.plan.sheets, numbers(scene), strict=True):
        if sheet.number in letter:
            beside = text_box(scene, number)[0] - scene.mm(CLEAR_MM)
            yield Text(beside, number.y, letter[sheet.number], "text", SMALL, "end")
