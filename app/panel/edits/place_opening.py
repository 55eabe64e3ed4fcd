"""Give an opening's shape by its values. Fields: opening (its mark), shape and the fields of its shape."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.panel.edit import Edit
from app.panel.form import Form
from app.panel.form_shapes import opening_shape
from app.panel.marks import marked, replaced
from app.panel.shape_words import said_shape
from app.panel.shapes import Shape
from app.panel.values import Panel


@dataclass(frozen=True, slots=True)
class PlaceOpening(Edit):
    name: ClassVar[str] = "place_opening"
    opening: str
    shape: Shape

    @classmethod
    def read(cls, form: Form) -> Self:
        return cls(form.text("opening", "the opening's mark"), opening_shape(form))

    def label(self, _panel: Panel, unit: str = "in", /) -> str:
        return f"Set {self.opening} to {said_shape(self.shape, unit)}"

    def changed(self, panel: Panel) -> Panel:
        old = marked(panel.openings, self.opening, "opening")
        return replace(panel, openings=replaced(panel.openings, old, replace(old, shape=self.shape)))


EDIT = PlaceOpening
