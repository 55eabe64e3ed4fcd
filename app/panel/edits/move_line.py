"""Move a strip or a fixing line whole. Fields: thing (its key), dx to the right, dy up; blank is 0."""

from dataclasses import dataclass
from typing import ClassVar, Self

from app.lengths import Length
from app.panel.corners import corners_of, is_closed, said_thing, with_corners
from app.panel.edit import Edit
from app.panel.faults import Fault, Refused
from app.panel.form import Form
from app.panel.moving import moved_points
from app.panel.values import Panel
from app.panel.wording import quoted, said_move


@dataclass(frozen=True, slots=True)
class MoveLine(Edit):
    name: ClassVar[str] = "move_line"
    thing: str
    dx: Length = Length(0)  # noqa: RUF009 - Length is frozen
    dy: Length = Length(0)  # noqa: RUF009

    @classmethod
    def read(cls, form: Form) -> Self:
        dx, dy = form.optional_length("dx"), form.optional_length("dy")
        return cls(form.text("thing", "the line's key, for example strips/R1"), dx or Length(0), dy or Length(0))

    def label(self, _panel: Panel, unit: str = "in", /) -> str:
        return f"Move {said_thing(self.thing)} {said_move(self.dx, self.dy, unit)}"

    def changed(self, panel: Panel) -> Panel:
        if is_closed(self.thing):
            raise Refused([Fault("thing", quoted(self.thing), "a strip or a fixing line")])
        return with_corners(panel, self.thing, moved_points(corners_of(panel, self.thing), self.dx, self.dy))


EDIT = MoveLine
