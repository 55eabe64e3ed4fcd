"""Put one point of the outline elsewhere. Fields: point (its number, from 0), x, y."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.lengths import Length
from app.panel.edit import Edit
from app.panel.form import Form
from app.panel.frame import reframed
from app.panel.outline_numbers import existing
from app.panel.values import Panel
from app.panel.wording import said_point


@dataclass(frozen=True, slots=True)
class MovePoint(Edit):
    """A point put left of or below 0 makes the panel larger: the frame follows, and nothing in the face moves."""

    name: ClassVar[str] = "move_point"
    point: int
    x: Length
    y: Length

    @classmethod
    def read(cls, form: Form) -> Self:
        return cls(form.number("point"), form.length("x"), form.length("y"))

    def label(self, _panel: Panel, unit: str = "in", /) -> str:
        return f"Move point {self.point} to {said_point((self.x, self.y), unit)}"

    def changed(self, panel: Panel) -> Panel:
        k = existing(self.point, panel, "point")
        outline = (*panel.outline[:k], (self.x, self.y), *panel.outline[k + 1 :])
        return reframed(replace(panel, outline=outline))


EDIT = MovePoint
