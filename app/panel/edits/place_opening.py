"""Give an opening's shape by its values. Fields: opening (its mark), shape and the fields of its shape."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.panel.edit import Edit
from app.panel.form import Form
from app.panel.form_shapes import opening_shape
from app.panel.marks import marked, replaced
from app.panel.shape_words import said_shape
from app.panel.shapes import Rect, Shape
from app.panel.values import Panel


@dataclass(frozen=True, slots=True)
class PlaceOpening(Edit):
    """Only a rectangle has sides that can be treated one by one: another shape drops what was said of them."""

    name: ClassVar[str] = "place_opening"
    opening: str
    shape: Shape

    @classmethod
    def read(cls, form: Form) -> Self:
        return cls(form.text("opening", "the opening's mark"), opening_shape(form))

    def label(self, panel: Panel, unit: str = "in", /) -> str:
        had_sides = any(opening.sides for opening in panel.openings if opening.mark == self.opening)
        dropped = "; all sides back to the margin" if had_sides and not self._sides_stay() else ""
        return f"Set {self.opening} to {said_shape(self.shape, unit)}{dropped}"

    def changed(self, panel: Panel) -> Panel:
        old = marked(panel.openings, self.opening, "opening")
        new = replace(old, shape=self.shape, sides=old.sides if self._sides_stay() else ())
        return replace(panel, openings=replaced(panel.openings, old, new))

    def _sides_stay(self) -> bool:
        return isinstance(self.shape, Rect)


EDIT = PlaceOpening
