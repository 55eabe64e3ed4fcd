"""Remove a strip. Field: strip (its mark)."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.panel.edit import Edit
from app.panel.form import Form
from app.panel.marks import marked, without
from app.panel.values import Panel


@dataclass(frozen=True, slots=True)
class RemoveStrip(Edit):
    name: ClassVar[str] = "remove_strip"
    strip: str

    @classmethod
    def read(cls, form: Form) -> Self:
        return cls(form.text("strip", "the strip's mark"))

    def label(self, _panel: Panel, _unit: str = "in", /) -> str:
        return f"Remove strip {self.strip}"

    def changed(self, panel: Panel) -> Panel:
        return replace(panel, strips=without(panel.strips, marked(panel.strips, self.strip, "strip")))


EDIT = RemoveStrip
