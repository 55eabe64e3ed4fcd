"""Repeat an opening in rows and columns. Fields: opening (its mark), columns, rows, across and up (the clear gaps
between; blank: 0)."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.lengths import Length
from app.panel.edit import Edit
from app.panel.extents import extent
from app.panel.faults import Fault, Refused
from app.panel.form import Form
from app.panel.marks import free_mark, marked, opening_letter
from app.panel.moving import moved_shape
from app.panel.values import Panel

MOST = 200


@dataclass(frozen=True, slots=True)
class GridOpenings(Edit):
    """The opening itself is the lower left of the grid; the others carry the next free marks, row by row upward."""

    name: ClassVar[str] = "grid_openings"
    opening: str
    columns: int
    rows: int
    across: Length
    up: Length

    @classmethod
    def read(cls, form: Form) -> Self:
        columns, rows = form.number("columns"), form.number("rows")
        across, up = form.optional_length("across"), form.optional_length("up")
        mark = form.text("opening", "the opening's mark")
        return cls(mark, columns, rows, across or Length(0), up or Length(0))

    def label(self, _panel: Panel, _unit: str = "in", /) -> str:
        return f"Repeat {self.opening} in {self.columns} columns and {self.rows} rows"

    def changed(self, panel: Panel) -> Panel:
        if self.columns < 1 or self.rows < 1 or self.columns * self.rows > MOST:
            found = f"{self.columns} columns, {self.rows} rows"
            raise Refused([Fault("columns", found, f"at least 1 of each, {MOST} openings together at most")])
        one = marked(panel.openings, self.opening, "opening")
        box, made = extent(one.shape), list(panel.openings)
        for n in range(1, self.columns * self.rows):
            row, column = divmod(n, self.columns)
            dx, dy = column * (box.width + self.across.nm), row * (box.height + self.up.nm)
            shape = moved_shape(one.shape, Length(dx), Length(dy))
            made.append(replace(one, mark=free_mark(opening_letter(one.use), made), shape=shape))
        return replace(panel, openings=tuple(made))


EDIT = GridOpenings
