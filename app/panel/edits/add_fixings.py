"""Add several lines along which the liner is held. Fields: lines (`x, y; x, y | x, y; x, y`), by (as for one line)."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.panel.edit import Edit
from app.panel.faults import Fault
from app.panel.form import LONGEST_LIST, Form
from app.panel.shapes import Point
from app.panel.values import Fixing, Panel


@dataclass(frozen=True, slots=True)
class AddFixings(Edit):
    """All of them or, where one is wrong, none; lines are told by their places from 1."""

    name: ClassVar[str] = "add_fixings"
    lines: tuple[tuple[Point, ...], ...]
    by: str | None = None

    @classmethod
    def read(cls, form: Form) -> Self:
        typed = [text for text in (form.optional_text("lines") or "").split("|") if text.strip()]
        if not 0 < len(typed) <= LONGEST_LIST:
            expected = f"lines as x, y; x, y with | between, at most {LONGEST_LIST}"
            form.faults.append(Fault("lines", f"{len(typed):,} lines" if typed else "nothing", expected))
            typed = []
        return cls(tuple(_line(form, text, k) for k, text in enumerate(typed, start=1)), form.optional_text("by"))

    def label(self, _panel: Panel, _unit: str = "in", /) -> str:
        count = "1 fixing line" if len(self.lines) == 1 else f"{len(self.lines)} fixing lines"
        return f"Add {count}{f' by {self.by}' if self.by else ''}"

    def changed(self, panel: Panel) -> Panel:
        return replace(panel, fixings=(*panel.fixings, *(Fixing(line, self.by) for line in self.lines)))


def _line(form: Form, text: str, place: int) -> tuple[Point, ...]:
    alone = Form({"lines": text}, form.unit)
    points = alone.points("lines")
    form.faults += [replace(fault, found=f"line {place}: {fault.found}") for fault in alone.faults]
    return points


EDIT = AddFixings
