"""Remove a point of the outline. Field: point (its number, from 0)."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.panel.edge_numbers import without_point
from app.panel.edit import Edit
from app.panel.form import Form
from app.panel.frame import reframed
from app.panel.outline_numbers import existing
from app.panel.values import Panel


@dataclass(frozen=True, slots=True)
class RemovePoint(Edit):
    name: ClassVar[str] = "remove_point"
    point: int

    @classmethod
    def read(cls, form: Form) -> Self:
        return cls(form.number("point"))

    def label(self, _panel: Panel, _unit: str = "in", /) -> str:
        return f"Remove point {self.point}"

    def changed(self, panel: Panel) -> Panel:
        k = existing(self.point, panel, "point")
        outline = (*panel.outline[:k], *panel.outline[k + 1 :])
        return reframed(replace(panel, outline=outline, edges=without_point(panel.edges, k)))


EDIT = RemovePoint
