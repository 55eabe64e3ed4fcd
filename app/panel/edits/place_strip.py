"""Give a strip by its values. Fields: strip (its mark), mark (blank: as it is), line (`x, y; x, y`), width."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.lengths import Length
from app.panel.edit import Edit
from app.panel.form import Form
from app.panel.marks import marked, replaced
from app.panel.shapes import Point
from app.panel.values import Panel, Strip
from app.panel.wording import said, said_point


@dataclass(frozen=True, slots=True)
class PlaceStrip(Edit):
    name: ClassVar[str] = "place_strip"
    strip: str
    line: tuple[Point, ...]
    width: Length
    mark: str = ""

    @classmethod
    def read(cls, form: Form) -> Self:
        strip, line = form.text("strip", "the strip's mark"), form.points("line")
        return cls(strip, line, form.length("width"), form.optional_text("mark") or "")

    def label(self, _panel: Panel, unit: str = "in", /) -> str:
        ends = f", {said_point(self.line[0], unit)} to {said_point(self.line[-1], unit)}" if self.line else ""
        renamed = f", renamed {self.mark}" if self.mark not in ("", self.strip) else ""
        return f"Set {self.strip} to {said(self.width, unit)} wide{ends}{renamed}"

    def changed(self, panel: Panel) -> Panel:
        old = marked(panel.strips, self.strip, "strip")
        new = Strip(self.mark or old.mark, self.line, self.width)
        return replace(panel, strips=replaced(panel.strips, old, new))


EDIT = PlaceStrip
