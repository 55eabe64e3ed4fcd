"""Give the whole outline. Fields: points (`x, y; x, y`), or width and height for a rectangle."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.lengths import Length
from app.panel.edit import Edit
from app.panel.form import Form
from app.panel.shapes import Point
from app.panel.values import Panel
from app.panel.wording import said_size


@dataclass(frozen=True, slots=True)
class SetOutline(Edit):
    """With another number of points an edge's number means another edge, so all edges go back to the panel's margin."""

    name: ClassVar[str] = "set_outline"
    points: tuple[Point, ...]

    @classmethod
    def rectangle(cls, width: Length, height: Length) -> Self:
        """The outline of a rectangle, anticlockwise from its lower left."""
        zero = Length(0)
        return cls(((zero, zero), (width, zero), (width, height), (zero, height)))

    @classmethod
    def read(cls, form: Form) -> Self:
        if form.has("points"):
            return cls(form.points("points"))
        return cls.rectangle(form.length("width"), form.length("height"))

    def label(self, panel: Panel, unit: str = "in", /) -> str:
        reset = "; all edges back to the margin" if panel.edges and not self._keeps_edges(panel) else ""
        return f"Set outline to {self._said(unit)}{reset}"

    def changed(self, panel: Panel) -> Panel:
        return replace(panel, outline=self.points, edges=panel.edges if self._keeps_edges(panel) else ())

    def _keeps_edges(self, panel: Panel) -> bool:
        return len(self.points) == len(panel.outline)

    def _said(self, unit: str) -> str:
        across, up = {x.nm for x, _ in self.points}, {y.nm for _, y in self.points}
        if not self.points:
            return "no points"
        size = said_size(Length(max(across) - min(across)), Length(max(up) - min(up)), unit)
        is_rectangle = len(self.points) == 4 and len(across) == len(up) == 2
        return size if is_rectangle else f"{len(self.points)} points, {size}"


EDIT = SetOutline
