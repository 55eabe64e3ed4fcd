"""Remove an opening. Field: opening (its mark)."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.panel.edit import Edit
from app.panel.form import Form
from app.panel.marks import marked, without
from app.panel.values import Panel


@dataclass(frozen=True, slots=True)
class RemoveOpening(Edit):
    name: ClassVar[str] = "remove_opening"
    opening: str

    @classmethod
    def read(cls, form: Form) -> Self:
        return cls(form.text("opening", "the opening's mark"))

    def label(self, _panel: Panel, _unit: str = "in", /) -> str:
        return f"Remove {self.opening}"

    def changed(self, panel: Panel) -> Panel:
        gone = marked(panel.openings, self.opening, "opening")
        return replace(panel, openings=without(panel.openings, gone))


EDIT = RemoveOpening
