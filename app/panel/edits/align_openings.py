"""Line openings up with the first. Fields: marks (with commas between), line (left, right, middle, head, sill or
level)."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.lengths import Length
from app.panel.edit import Edit
from app.panel.extents import Extent, extent
from app.panel.faults import Fault, Refused
from app.panel.form import Form
from app.panel.marks import all_marked
from app.panel.moving import moved_shape
from app.panel.values import Opening, Panel
from app.panel.wording import one_of, quoted

LINES = {
    "left": "left jambs",
    "right": "right jambs",
    "middle": "middles across",
    "head": "heads",
    "sill": "sills",
    "level": "middles up",
}


@dataclass(frozen=True, slots=True)
class AlignOpenings(Edit):
    name: ClassVar[str] = "align_openings"
    marks: tuple[str, ...]
    line: str

    @classmethod
    def read(cls, form: Form) -> Self:
        marks = form.texts("marks", "the openings' marks with commas between")
        return cls(marks, form.choice("line", LINES))

    def label(self, _panel: Panel, _unit: str = "in", /) -> str:
        first, *others = self.marks or ("nothing",)
        return f"Line up {LINES.get(self.line, self.line)} of {', '.join(others) or 'nothing'} with {first}"

    def changed(self, panel: Panel) -> Panel:
        if self.line not in LINES:
            raise Refused([Fault("line", quoted(self.line), one_of(LINES, self.line))])
        first, *others = all_marked(panel.openings, self.marks, "marks")
        to = _place(extent(first.shape), self.line)
        return replace(panel, openings=tuple(self._moved(one, to) if one in others else one for one in panel.openings))

    def _moved(self, opening: Opening, to: int) -> Opening:
        by = Length(to - _place(extent(opening.shape), self.line))
        none = Length(0)
        dx, dy = (by, none) if self.line in ("left", "right", "middle") else (none, by)
        return replace(opening, shape=moved_shape(opening.shape, dx, dy))


def _place(box: Extent, line: str) -> int:
    places = {
        "left": box.left,
        "right": box.right,
        "middle": (box.left + box.right) // 2,
        "head": box.head,
        "sill": box.foot,
        "level": (box.foot + box.head) // 2,
    }
    return places[line]


EDIT = AlignOpenings
