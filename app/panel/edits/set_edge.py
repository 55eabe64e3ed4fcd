"""Say how the brick ends at one edge. Fields: edge (its number, from 0), treatment, depth (return), margin (blank:
the panel's)."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.lengths import Length
from app.panel.check_edges import TREATMENTS
from app.panel.edit import Edit
from app.panel.form import Form
from app.panel.outline_numbers import existing
from app.panel.values import Edge, Panel
from app.panel.wording import said


@dataclass(frozen=True, slots=True)
class SetEdge(Edit):
    """`margin` without a length of its own is how every edge is, so nothing is kept of it."""

    name: ClassVar[str] = "set_edge"
    edge: int
    treatment: str
    depth: Length | None = None
    margin: Length | None = None

    @classmethod
    def read(cls, form: Form) -> Self:
        edge, treatment = form.number("edge"), form.choice("treatment", TREATMENTS)
        depth = form.length("depth") if treatment == "return" else None
        margin = form.optional_length("margin") if treatment == "margin" else None
        return cls(edge, treatment, depth, margin)

    def label(self, _panel: Panel, unit: str = "in", /) -> str:
        depth = f" {said(self.depth, unit)} deep" if self.depth is not None else ""
        margin = f" of {said(self.margin, unit)}" if self.margin is not None else ""
        return f"Set edge {self.edge} to {self.treatment}{depth}{margin}"

    def changed(self, panel: Panel) -> Panel:
        number = existing(self.edge, panel, "edge")
        new = Edge(number, self.treatment, self.depth, self.margin)
        before = tuple(edge for edge in panel.edges if edge.edge < number)
        after = tuple(edge for edge in panel.edges if edge.edge > number)
        is_plain = self.treatment == "margin" and self.margin is None
        return replace(panel, edges=(*before, *(() if is_plain else (new,)), *after))


EDIT = SetEdge
