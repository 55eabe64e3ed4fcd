"""Space openings so that the clear gaps between them are equal; the outermost stay. Fields: marks (with commas
between), way (across, up)."""

from dataclasses import dataclass, replace
from fractions import Fraction
from typing import ClassVar, Self

from app.lengths import Length
from app.panel.edit import Edit
from app.panel.extents import extent
from app.panel.faults import Fault, Refused
from app.panel.form import Form
from app.panel.marks import all_marked
from app.panel.moving import moved_shape
from app.panel.values import Opening, Panel
from app.panel.wording import one_of, quoted

WAYS = ("across", "up")
LEAST = 3


@dataclass(frozen=True, slots=True)
class DistributeOpenings(Edit):
    name: ClassVar[str] = "distribute_openings"
    marks: tuple[str, ...]
    way: str

    @classmethod
    def read(cls, form: Form) -> Self:
        marks = form.texts("marks", "the openings' marks with commas between")
        return cls(marks, form.choice("way", WAYS))

    def label(self, _panel: Panel, _unit: str = "in", /) -> str:
        return f"Space {', '.join(self.marks)} evenly {self.way}"

    def changed(self, panel: Panel) -> Panel:
        if self.way not in WAYS:
            raise Refused([Fault("way", quoted(self.way), one_of(WAYS, self.way))])
        meant = all_marked(panel.openings, self.marks, "marks")
        if len(meant) < LEAST:
            raise Refused([Fault("marks", f"{len(meant)} openings", f"at least {LEAST}")])
        placed = {one.mark: other for one, other in self._spaced(meant)}
        return replace(panel, openings=tuple(placed.get(one.mark, one) for one in panel.openings))

    def _spaced(self, openings: tuple[Opening, ...]) -> list[tuple[Opening, Opening]]:
        row = sorted(openings, key=self._low)
        sizes = [self._high(one) - self._low(one) for one in row]
        gap = Fraction(self._high(row[-1]) - self._low(row[0]) - sum(sizes), len(row) - 1)
        placed, at = [], Fraction(self._low(row[0]))
        for one, size in zip(row, sizes, strict=True):
            placed.append((one, self._moved(one, round(at) - self._low(one))))
            at += size + gap
        return placed

    def _moved(self, opening: Opening, by: int) -> Opening:
        dx, dy = (by, 0) if self.way == "across" else (0, by)
        return replace(opening, shape=moved_shape(opening.shape, Length(dx), Length(dy)))

    def _low(self, opening: Opening) -> int:
        box = extent(opening.shape)
        return box.left if self.way == "across" else box.foot

    def _high(self, opening: Opening) -> int:
        box = extent(opening.shape)
        return box.right if self.way == "across" else box.head


EDIT = DistributeOpenings
