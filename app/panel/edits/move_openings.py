"""Move several openings together. Fields: marks (with commas between), dx to the right, dy up; blank is 0."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.lengths import Length
from app.panel.edit import Edit
from app.panel.form import Form
from app.panel.marks import all_marked
from app.panel.moving import moved_shape
from app.panel.values import Opening, Panel
from app.panel.wording import said_move


@dataclass(frozen=True, slots=True)
class MoveOpenings(Edit):
    name: ClassVar[str] = "move_openings"
    marks: tuple[str, ...]
    dx: Length = Length(0)  # noqa: RUF009 - Length is frozen
    dy: Length = Length(0)  # noqa: RUF009

    @classmethod
    def read(cls, form: Form) -> Self:
        dx, dy = form.optional_length("dx"), form.optional_length("dy")
        return cls(form.texts("marks", "the openings' marks with commas between"), dx or Length(0), dy or Length(0))

    def label(self, _panel: Panel, unit: str = "in", /) -> str:
        return f"Move {', '.join(self.marks)} {said_move(self.dx, self.dy, unit)}"

    def changed(self, panel: Panel) -> Panel:
        meant = all_marked(panel.openings, self.marks, "marks")
        return replace(panel, openings=tuple(self._moved(one) if one in meant else one for one in panel.openings))

    def _moved(self, opening: Opening) -> Opening:
        return replace(opening, shape=moved_shape(opening.shape, self.dx, self.dy))


EDIT = MoveOpenings
