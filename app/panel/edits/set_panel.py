"""Set the panel's own values. Fields: mark, thickness, base (blank: 0)."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.lengths import Length
from app.panel.edit import Edit
from app.panel.form import Form
from app.panel.values import Panel
from app.panel.wording import said


@dataclass(frozen=True, slots=True)
class SetPanel(Edit):
    name: ClassVar[str] = "set_panel"
    mark: str
    thickness: Length
    base: Length = Length(0)  # noqa: RUF009 - Length is frozen

    @classmethod
    def read(cls, form: Form) -> Self:
        mark, thickness = form.text("mark", "the panel's mark"), form.length("thickness")
        return cls(mark, thickness, form.optional_length("base") or Length(0))

    def label(self, panel: Panel, unit: str = "in", /) -> str:
        parts = [
            f"mark to {self.mark}" if self.mark != panel.mark else "",
            f"thickness to {said(self.thickness, unit)}" if self.thickness != panel.thickness else "",
            f"base to {said(self.base, unit)}" if self.base != panel.base else "",
        ]
        return f"Set {', '.join(filter(None, parts)) or 'panel as it is'}"

    def changed(self, panel: Panel) -> Panel:
        return replace(panel, mark=self.mark, thickness=self.thickness, base=self.base)


EDIT = SetPanel
