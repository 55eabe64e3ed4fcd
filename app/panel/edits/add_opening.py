"""Add an opening. Fields: mark (blank: the next free one), use, shape and the fields of its shape."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.panel.edit import Edit
from app.panel.form import Form
from app.panel.form_shapes import opening_shape
from app.panel.marks import free_mark, opening_letter
from app.panel.shapes import Shape
from app.panel.values import Opening, Panel


@dataclass(frozen=True, slots=True)
class AddOpening(Edit):
    name: ClassVar[str] = "add_opening"
    shape: Shape
    mark: str = ""
    use: str | None = None

    @classmethod
    def read(cls, form: Form) -> Self:
        return cls(opening_shape(form), form.optional_text("mark") or "", form.optional_text("use"))

    def label(self, panel: Panel, _unit: str = "in", /) -> str:
        return f"Add {self.use or 'opening'} {self._mark(panel)}"

    def changed(self, panel: Panel) -> Panel:
        return replace(panel, openings=(*panel.openings, Opening(self._mark(panel), self.shape, self.use)))

    def _mark(self, panel: Panel) -> str:
        return self.mark or free_mark(opening_letter(self.use), panel.openings)


EDIT = AddOpening
