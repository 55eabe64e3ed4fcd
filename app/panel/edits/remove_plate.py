"""Remove an embed plate. Fields: plate (its mark)."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.panel.edit import Edit
from app.panel.form import Form
from app.panel.marks import marked, without
from app.panel.values import Panel


@dataclass(frozen=True, slots=True)
class RemovePlate(Edit):
    name: ClassVar[str] = "remove_plate"
    plate: str

    @classmethod
    def read(cls, form: Form) -> Self:
        return cls(form.text("plate", "the plate's mark"))

    def label(self, _panel: Panel, _unit: str = "in", /) -> str:
        return f"Remove plate {self.plate}"

    def changed(self, panel: Panel) -> Panel:
        return replace(panel, plates=without(panel.plates, marked(panel.plates, self.plate, "plate")))


EDIT = RemovePlate
