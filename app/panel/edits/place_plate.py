"""Give an embed plate by its values. Fields: plate (its mark), mark (blank: as it is), shape and its fields."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.panel.edit import Edit
from app.panel.form import Form
from app.panel.form_shapes import plate_shape
from app.panel.marks import marked, replaced
from app.panel.shape_words import said_shape
from app.panel.shapes import Polygon, Rect
from app.panel.values import Panel, Plate


@dataclass(frozen=True, slots=True)
class PlacePlate(Edit):
    name: ClassVar[str] = "place_plate"
    plate: str
    shape: Rect | Polygon
    mark: str = ""

    @classmethod
    def read(cls, form: Form) -> Self:
        return cls(form.text("plate", "the plate's mark"), plate_shape(form), form.optional_text("mark") or "")

    def label(self, _panel: Panel, unit: str = "in", /) -> str:
        renamed = f", renamed {self.mark}" if self.mark not in ("", self.plate) else ""
        return f"Set {self.plate} to {said_shape(self.shape, unit)}{renamed}"

    def changed(self, panel: Panel) -> Panel:
        old = marked(panel.plates, self.plate, "plate")
        return replace(panel, plates=replaced(panel.plates, old, Plate(self.mark or old.mark, self.shape)))


EDIT = PlacePlate
