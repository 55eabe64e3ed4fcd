"""Move an opening. Fields: opening (its mark), dx to the right, dy up; blank is 0."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.lengths import Length
from app.panel.edit import Edit
from app.panel.form import Form
from app.panel.marks import marked, replaced
from app.panel.moving import moved_shape
from app.panel.values import Panel
from app.panel.wording import said_move


@dataclass(frozen=True, slots=True)
class MoveOpening(Edit):
    name: ClassVar[str] = "move_opening"
    opening: str
    dx: Length = Length(0)  # noqa: RUF009 - Length is frozen
    dy: Length = Length(0)  # noqa: RUF009

    @classmethod
    def read(cls, form: Form) -> Self:
        dx, dy = form.optional_length("dx"), form.optional_length("dy")
        return cls(form.text("opening", "the opening's mark"), dx or Length(0), dy or Length(0))

    def label(self, _panel: Panel, unit: str = "in", /) -> str:
        return f"Move {self.opening} {said_move(self.dx, self.dy, unit)}"

    def changed(self, panel: Panel) -> Panel:
        old = marked(panel.openings, self.opening, "opening")
        new = replace(old, shape=moved_shape(old.shape, self.dx, self.dy))
        return replace(panel, openings=replaced(panel.openings, old, new))


EDIT = MoveOpening
