"""Copy openings once or several times. Fields: marks (with commas between), dx and dy from one to the next (blank: 0),
count (blank: 1)."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.lengths import Length
from app.panel.edit import Edit
from app.panel.faults import Fault, Refused
from app.panel.form import Form
from app.panel.marks import all_marked, free_mark, opening_letter
from app.panel.moving import moved_shape
from app.panel.values import Opening, Panel
from app.panel.wording import said_move

MOST = 100


@dataclass(frozen=True, slots=True)
class CopyOpenings(Edit):
    """Copies carry the next free marks and all that is said of their original's sides."""

    name: ClassVar[str] = "copy_openings"
    marks: tuple[str, ...]
    dx: Length
    dy: Length
    count: int = 1

    @classmethod
    def read(cls, form: Form) -> Self:
        marks = form.texts("marks", "the openings' marks with commas between")
        dx, dy = form.optional_length("dx"), form.optional_length("dy")
        count = form.number("count") if form.has("count") else 1
        return cls(marks, dx or Length(0), dy or Length(0), count)

    def label(self, _panel: Panel, unit: str = "in", /) -> str:
        times = "" if self.count == 1 else f"{self.count} times "
        return f"Copy {', '.join(self.marks)} {times}{said_move(self.dx, self.dy, unit)}"

    def changed(self, panel: Panel) -> Panel:
        if not 1 <= self.count <= MOST:
            raise Refused([Fault("count", str(self.count), f"1 to {MOST} copies")])
        meant, made = all_marked(panel.openings, self.marks, "marks"), list(panel.openings)
        for n in range(1, self.count + 1):
            for one in meant:
                made.append(replace(self._moved(one, n), mark=free_mark(opening_letter(one.use), made)))
        return replace(panel, openings=tuple(made))

    def _moved(self, opening: Opening, times: int) -> Opening:
        dx, dy = Length(self.dx.nm * times), Length(self.dy.nm * times)
        return replace(opening, shape=moved_shape(opening.shape, dx, dy))


EDIT = CopyOpenings
