"""Move an embed plate. Fields: plate (its mark), dx to the right, dy up; blank is 0."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.lengths import Length
from app.panel.edit import Edit
from app.panel.form import Form
from app.panel.marks import marked, replaced
from app.panel.moving import moved_region
from app.panel.values import Panel
from app.panel.wording import said_move


@dataclass(frozen=True, slots=True)
class MovePlate(Edit):
    name: ClassVar[str] = "move_plate"
    plate: str
    dx: Length = Length(0)  # noqa: RUF009 - Length is frozen
    dy: Length = Length(0)  # noqa: RUF009

    @classmethod
    def read(cls, form: Form) -> Self:
        dx, dy = form.optional_length("dx"), form.optional_length("dy")
        return cls(form.text("plate", "the plate's mark"), dx or Length(0), dy or Length(0))

    def label(self, _panel: Panel, unit: str = "in", /) -> str:
        return f"Move plate {self.plate} {said_move(self.dx, self.dy, unit)}"

    def changed(self, panel: Panel) -> Panel:
        old = marked(panel.plates, self.plate, "plate")
        new = replace(old, shape=moved_region(old.shape, self.dx, self.dy))
        return replace(panel, plates=replaced(panel.plates, old, new))


EDIT = MovePlate
