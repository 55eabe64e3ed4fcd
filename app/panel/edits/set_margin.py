"""Set the panel's margin. Field: margin (blank: one head joint)."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.lengths import Length
from app.panel.edit import Edit
from app.panel.form import Form
from app.panel.values import Panel
from app.panel.wording import said


@dataclass(frozen=True, slots=True)
class SetMargin(Edit):
    name: ClassVar[str] = "set_margin"
    margin: Length | None = None

    @classmethod
    def read(cls, form: Form) -> Self:
        return cls(form.optional_length("margin"))

    def label(self, _panel: Panel, unit: str = "in", /) -> str:
        return f"Set margin to {'one head joint' if self.margin is None else said(self.margin, unit)}"

    def changed(self, panel: Panel) -> Panel:
        return replace(panel, margin=self.margin)


EDIT = SetMargin
