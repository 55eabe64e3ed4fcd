"""Say how the brick ends at one side of a rectangular opening. Fields: opening (its mark), side (left, right, head or
sill), treatment, depth (return), margin (blank: the panel's)."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.lengths import Length
from app.panel.check_edges import TREATMENTS
from app.panel.check_sides import SIDES
from app.panel.edit import Edit
from app.panel.faults import Fault, Refused
from app.panel.form import Form
from app.panel.marks import marked, replaced
from app.panel.values import Panel, Side
from app.panel.wording import one_of, quoted, said


@dataclass(frozen=True, slots=True)
class SetSide(Edit):
    """`margin` without a length of its own is how every side is, so nothing is kept of it."""

    name: ClassVar[str] = "set_side"
    opening: str
    side: str
    treatment: str
    depth: Length | None = None
    margin: Length | None = None

    @classmethod
    def read(cls, form: Form) -> Self:
        opening, side = form.text("opening", "the opening's mark"), form.choice("side", SIDES)
        treatment = form.choice("treatment", TREATMENTS)
        depth = form.length("depth") if treatment == "return" else None
        margin = form.optional_length("margin") if treatment == "margin" else None
        return cls(opening, side, treatment, depth, margin)

    def label(self, _panel: Panel, unit: str = "in", /) -> str:
        depth = f" {said(self.depth, unit)} deep" if self.depth is not None else ""
        margin = f" of {said(self.margin, unit)}" if self.margin is not None else ""
        return f"Set {self.side} of {self.opening} to {self.treatment}{depth}{margin}"

    def changed(self, panel: Panel) -> Panel:
        if self.side not in SIDES:
            raise Refused([Fault("side", quoted(self.side), one_of(SIDES, self.side))])
        old = marked(panel.openings, self.opening, "opening")
        sides = {side.side: side for side in old.sides if side.side != self.side}
        if self.treatment != "margin" or self.margin is not None:
            sides[self.side] = Side(self.side, self.treatment, self.depth, self.margin)
        new = replace(old, sides=tuple(sides[name] for name in SIDES if name in sides))
        return replace(panel, openings=replaced(panel.openings, old, new))


EDIT = SetSide
