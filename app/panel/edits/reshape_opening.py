"""Drag a side or corner of an opening. Fields: opening (its mark), side (`left`, `top left` ...), dx, dy (blank: 0)."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.lengths import Length
from app.panel.edit import Edit
from app.panel.faults import Fault, Refused
from app.panel.form import Form
from app.panel.marks import marked, replaced
from app.panel.reshaping import SIDES, reshaped
from app.panel.values import Panel
from app.panel.wording import one_of, quoted, said_move


@dataclass(frozen=True, slots=True)
class ReshapeOpening(Edit):
    name: ClassVar[str] = "reshape_opening"
    opening: str
    side: str
    dx: Length = Length(0)  # noqa: RUF009 - Length is frozen
    dy: Length = Length(0)  # noqa: RUF009

    @classmethod
    def read(cls, form: Form) -> Self:
        opening, side = form.text("opening", "the opening's mark"), form.choice("side", SIDES)
        dx, dy = form.optional_length("dx"), form.optional_length("dy")
        return cls(opening, side, dx or Length(0), dy or Length(0))

    def label(self, _panel: Panel, unit: str = "in", /) -> str:
        return f"Move {self.side} of {self.opening} {said_move(self.dx, self.dy, unit)}"

    def changed(self, panel: Panel) -> Panel:
        if self.side not in SIDES:
            raise Refused([Fault("side", quoted(self.side), one_of(SIDES, self.side))])
        old = marked(panel.openings, self.opening, "opening")
        new = replace(old, shape=reshaped(old.shape, self.side, self.dx, self.dy))
        return replace(panel, openings=replaced(panel.openings, old, new))


EDIT = ReshapeOpening
