"""Add a strip. Fields: mark (blank: the next free one), line (`x, y; x, y`), width."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.lengths import Length
from app.panel.edit import Edit
from app.panel.form import Form
from app.panel.marks import free_mark
from app.panel.shapes import Point
from app.panel.values import Panel, Strip
from app.panel.wording import said


@dataclass(frozen=True, slots=True)
class AddStrip(Edit):
    name: ClassVar[str] = "add_strip"
    line: tuple[Point, ...]
    width: Length
    mark: str = ""

    @classmethod
    def read(cls, form: Form) -> Self:
        return cls(form.points("line"), form.length("width"), form.optional_text("mark") or "")

    def label(self, panel: Panel, unit: str = "in", /) -> str:
        return f"Add strip {self._mark(panel)}, {said(self.width, unit)} wide"

    def changed(self, panel: Panel) -> Panel:
        return replace(panel, strips=(*panel.strips, Strip(self._mark(panel), self.line, self.width)))

    def _mark(self, panel: Panel) -> str:
        return self.mark or free_mark("R", panel.strips)


EDIT = AddStrip
