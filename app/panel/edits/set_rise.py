"""Give the rise of an arch. Fields: opening (its mark), rise."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.lengths import Length
from app.panel.edit import Edit
from app.panel.faults import Fault, Refused
from app.panel.form import Form
from app.panel.marks import marked, replaced
from app.panel.shapes import Arch
from app.panel.values import Panel
from app.panel.wording import said


@dataclass(frozen=True, slots=True)
class SetRise(Edit):
    """The crown stays where it is."""

    name: ClassVar[str] = "set_rise"
    opening: str
    rise: Length

    @classmethod
    def read(cls, form: Form) -> Self:
        return cls(form.text("opening", "the opening's mark"), form.length("rise"))

    def label(self, _panel: Panel, unit: str = "in", /) -> str:
        return f"Set rise of {self.opening} to {said(self.rise, unit)}"

    def changed(self, panel: Panel) -> Panel:
        old = marked(panel.openings, self.opening, "opening")
        if not isinstance(old.shape, Arch):
            raise Refused([Fault("opening", f"{self.opening}, which is no arch", "an arched opening")])
        new = replace(old, shape=replace(old.shape, rise=self.rise))
        return replace(panel, openings=replaced(panel.openings, old, new))


EDIT = SetRise
