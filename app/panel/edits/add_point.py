"""Set a point on an edge of the outline. Fields: edge (its number, from 0), x, y (both blank: the edge's middle)."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.lengths import Length
from app.panel.edge_numbers import with_point
from app.panel.edit import Edit
from app.panel.form import Form
from app.panel.frame import reframed
from app.panel.outline_numbers import existing
from app.panel.shapes import Point
from app.panel.values import Panel
from app.panel.wording import said_point


@dataclass(frozen=True, slots=True)
class AddPoint(Edit):
    name: ClassVar[str] = "add_point"
    edge: int
    point: Point | None = None

    @classmethod
    def read(cls, form: Form) -> Self:
        return cls(form.number("edge"), form.optional_point("x", "y"))

    def label(self, _panel: Panel, unit: str = "in", /) -> str:
        place = said_point(self.point, unit) if self.point else "its middle"
        return f"Add point on edge {self.edge} at {place}"

    def changed(self, panel: Panel) -> Panel:
        k = existing(self.edge, panel, "edge")
        point = self.point or _middle(panel, k)
        outline = (*panel.outline[: k + 1], point, *panel.outline[k + 1 :])
        return reframed(replace(panel, outline=outline, edges=with_point(panel.edges, k)))


def _middle(panel: Panel, edge: int) -> Point:
    start, end = panel.outline[edge], panel.outline[(edge + 1) % len(panel.outline)]
    return Length((start[0].nm + end[0].nm) // 2), Length((start[1].nm + end[1].nm) // 2)


EDIT = AddPoint
