"""Give a fixing line by its values. Fields: fixing (its number, from 0), line (`x, y; x, y`), by (blank: not said)."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.panel.corners import corners_of, said_thing
from app.panel.edit import Edit
from app.panel.form import Form
from app.panel.shapes import Point
from app.panel.values import Fixing, Panel
from app.panel.wording import said_point


@dataclass(frozen=True, slots=True)
class PlaceFixing(Edit):
    name: ClassVar[str] = "place_fixing"
    fixing: int
    line: tuple[Point, ...]
    by: str | None = None

    @classmethod
    def read(cls, form: Form) -> Self:
        return cls(form.number("fixing"), form.points("line"), form.optional_text("by"))

    def label(self, _panel: Panel, unit: str = "in", /) -> str:
        ends = f", {said_point(self.line[0], unit)} to {said_point(self.line[-1], unit)}" if self.line else ""
        return f"Set {said_thing(self._key)}{f' by {self.by}' if self.by else ''}{ends}"

    def changed(self, panel: Panel) -> Panel:
        corners_of(panel, self._key)
        k, placed = self.fixing, Fixing(self.line, self.by)
        return replace(panel, fixings=(*panel.fixings[:k], placed, *panel.fixings[k + 1 :]))

    @property
    def _key(self) -> str:
        return f"fixings/{self.fixing}"


EDIT = PlaceFixing
