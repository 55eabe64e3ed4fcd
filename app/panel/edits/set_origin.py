"""Set where the bond of a part starts. Fields: part (`field` or a zone's mark), x, y (both blank: the part's lower
left)."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.panel.edit import Edit
from app.panel.face_parts import PART, with_work
from app.panel.form import Form
from app.panel.shapes import Point
from app.panel.values import Panel
from app.panel.wording import said_point


@dataclass(frozen=True, slots=True)
class SetOrigin(Edit):
    name: ClassVar[str] = "set_origin"
    part: str
    origin: Point | None = None

    @classmethod
    def read(cls, form: Form) -> Self:
        return cls(form.text("part", PART), form.optional_point("x", "y"))

    def label(self, _panel: Panel, unit: str = "in", /) -> str:
        return f"Start bond of {self.part} at {said_point(self.origin, unit) if self.origin else 'its lower left'}"

    def changed(self, panel: Panel) -> Panel:
        return with_work(panel, self.part, lambda work: replace(work, origin=self.origin))


EDIT = SetOrigin
