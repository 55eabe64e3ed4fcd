"""Move one side of several rectangular openings. Fields: marks (with commas between), side (left, right, head or
sill), by (to the right, or up; below 0: to the left, or down)."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.lengths import Length
from app.panel.check_shapes import KEYS
from app.panel.check_sides import SIDES
from app.panel.edit import Edit
from app.panel.faults import Fault, Refused
from app.panel.form import Form
from app.panel.marks import all_marked
from app.panel.reshaping import reshaped
from app.panel.shapes import Rect
from app.panel.values import Opening, Panel
from app.panel.wording import one_of, quoted, said_move

NONE = Length(0)
_DRAGGED = {"left": "left", "right": "right", "head": "top", "sill": "bottom"}
_UP = ("head", "sill")


@dataclass(frozen=True, slots=True)
class ResizeOpenings(Edit):
    """The opposite side of every opening stays where it is."""

    name: ClassVar[str] = "resize_openings"
    marks: tuple[str, ...]
    side: str
    by: Length

    @classmethod
    def read(cls, form: Form) -> Self:
        marks = form.texts("marks", "the openings' marks with commas between")
        return cls(marks, form.choice("side", SIDES), form.length("by"))

    def label(self, _panel: Panel, unit: str = "in", /) -> str:
        return f"Move {self.side} of {', '.join(self.marks)} {said_move(*self._move(), unit)}"

    def changed(self, panel: Panel) -> Panel:
        if self.side not in SIDES:
            raise Refused([Fault("side", quoted(self.side), one_of(SIDES, self.side))])
        meant = all_marked(panel.openings, self.marks, "marks")
        odd = [f"{one.mark}, a shape of {KEYS[type(one.shape)]}" for one in meant if not isinstance(one.shape, Rect)]
        if odd:
            raise Refused([Fault("marks", "; ".join(odd), "rectangles only")])
        return replace(panel, openings=tuple(self._resized(one) if one in meant else one for one in panel.openings))

    def _resized(self, opening: Opening) -> Opening:
        return replace(opening, shape=reshaped(opening.shape, _DRAGGED[self.side], *self._move()))

    def _move(self) -> tuple[Length, Length]:
        return (NONE, self.by) if self.side in _UP else (self.by, NONE)


EDIT = ResizeOpenings
