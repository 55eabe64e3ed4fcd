"""Add an embed plate. Fields: mark (blank: the next free one), shape (rect, polygon) and its fields."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.panel.edit import Edit
from app.panel.form import Form
from app.panel.form_shapes import plate_shape
from app.panel.marks import free_mark
from app.panel.shapes import Polygon, Rect
from app.panel.values import Panel, Plate


@dataclass(frozen=True, slots=True)
class AddPlate(Edit):
    name: ClassVar[str] = "add_plate"
    shape: Rect | Polygon
    mark: str = ""

    @classmethod
    def read(cls, form: Form) -> Self:
        return cls(plate_shape(form), form.optional_text("mark") or "")

    def label(self, panel: Panel, _unit: str = "in", /) -> str:
        return f"Add plate {self._mark(panel)}"

    def changed(self, panel: Panel) -> Panel:
        return replace(panel, plates=(*panel.plates, Plate(self._mark(panel), self.shape)))

    def _mark(self, panel: Panel) -> str:
        return self.mark or free_mark("P", panel.plates)


EDIT = AddPlate
