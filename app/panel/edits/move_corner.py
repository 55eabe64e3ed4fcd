"""Put one corner of a polygon or a line elsewhere. Fields: thing (its key), point (its number, from 0), x, y."""

from dataclasses import dataclass
from typing import ClassVar, Self

from app.lengths import Length
from app.panel.corners import corner, corners_of, said_thing, with_corners
from app.panel.edit import Edit
from app.panel.form import Form
from app.panel.values import Panel
from app.panel.wording import said_point


@dataclass(frozen=True, slots=True)
class MoveCorner(Edit):
    name: ClassVar[str] = "move_corner"
    thing: str
    point: int
    x: Length
    y: Length

    @classmethod
    def read(cls, form: Form) -> Self:
        thing = form.text("thing", "the thing's key, for example openings/L1")
        return cls(thing, form.number("point"), form.length("x"), form.length("y"))

    def label(self, _panel: Panel, unit: str = "in", /) -> str:
        return f"Move point {self.point} of {said_thing(self.thing)} to {said_point((self.x, self.y), unit)}"

    def changed(self, panel: Panel) -> Panel:
        points = corners_of(panel, self.thing)
        k = corner(points, self.point, "point")
        return with_corners(panel, self.thing, (*points[:k], (self.x, self.y), *points[k + 1 :]))


EDIT = MoveCorner
