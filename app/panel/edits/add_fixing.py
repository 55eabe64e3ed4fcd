"""Add a line along which the liner is held. Fields: line (`x, y; x, y`), by (glue, tape, nails; blank: not said)."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.panel.edit import Edit
from app.panel.form import Form
from app.panel.shapes import Point
from app.panel.values import Fixing, Panel
from app.panel.wording import said_point


@dataclass(frozen=True, slots=True)
class AddFixing(Edit):
    name: ClassVar[str] = "add_fixing"
    line: tuple[Point, ...]
    by: str | None = None

    @classmethod
    def read(cls, form: Form) -> Self:
        return cls(form.points("line"), form.optional_text("by"))

    def label(self, _panel: Panel, unit: str = "in", /) -> str:
        ends = f", {said_point(self.line[0], unit)} to {said_point(self.line[-1], unit)}" if self.line else ""
        return f"Add fixing line{f' by {self.by}' if self.by else ''}{ends}"

    def changed(self, panel: Panel) -> Panel:
        return replace(panel, fixings=(*panel.fixings, Fixing(self.line, self.by)))


EDIT = AddFixing
