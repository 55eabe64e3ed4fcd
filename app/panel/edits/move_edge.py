"""Move one edge of the outline, of a polygon or of a line, both its ends together. Fields: thing (its key), edge (its
number: it starts at the point of that number), dx to the right, dy up; blank is 0."""

from dataclasses import dataclass
from typing import ClassVar, Self

from app.lengths import Length
from app.panel.corners import corner, corners_of, is_closed, said_thing, with_corners
from app.panel.edit import Edit
from app.panel.form import Form
from app.panel.moving import moved_point
from app.panel.values import Panel
from app.panel.wording import said_move


@dataclass(frozen=True, slots=True)
class MoveEdge(Edit):
    name: ClassVar[str] = "move_edge"
    thing: str
    edge: int
    dx: Length = Length(0)  # noqa: RUF009 - Length is frozen
    dy: Length = Length(0)  # noqa: RUF009

    @classmethod
    def read(cls, form: Form) -> Self:
        thing, edge = form.text("thing", "the thing's key, for example outline"), form.number("edge")
        dx, dy = form.optional_length("dx"), form.optional_length("dy")
        return cls(thing, edge, dx or Length(0), dy or Length(0))

    def label(self, _panel: Panel, unit: str = "in", /) -> str:
        return f"Move edge {self.edge} of {said_thing(self.thing)} {said_move(self.dx, self.dy, unit)}"

    def changed(self, panel: Panel) -> Panel:
        points = corners_of(panel, self.thing)
        edges = points if is_closed(self.thing) else points[:-1]
        k = corner(edges, self.edge, "edge")
        ends = (k, (k + 1) % len(points))
        moved = (moved_point(point, self.dx, self.dy) if n in ends else point for n, point in enumerate(points))
        return with_corners(panel, self.thing, tuple(moved))


EDIT = MoveEdge
