"""Say when the panel is cast, and whether its brick lies in the liner. Fields: cast_on (year, month and day such as
2026-12-01; blank: no day yet), placed (yes or no; blank: no)."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.panel.days import is_day
from app.panel.edit import Edit
from app.panel.faults import Fault
from app.panel.form import Form
from app.panel.values import Panel
from app.panel.wording import quoted


@dataclass(frozen=True, slots=True)
class SetCasting(Edit):
    name: ClassVar[str] = "set_casting"
    cast_on: str | None = None
    placed: bool = False

    @classmethod
    def read(cls, form: Form) -> Self:
        day = form.optional_text("cast_on")
        if day is not None and not is_day(day):
            form.faults.append(Fault("cast_on", quoted(day), "a day as year, month and day such as 2026-12-01"))
        return cls(day, form.flag("placed"))

    def label(self, panel: Panel, _unit: str = "in", /) -> str:
        placed = f"; brick {'' if self.placed else 'not '}placed" if self.placed != panel.placed else ""
        return f"Set casting day of {panel.mark} to {self.cast_on or 'none'}{placed}"

    def changed(self, panel: Panel) -> Panel:
        return replace(panel, cast_on=self.cast_on, placed=self.placed)


EDIT = SetCasting
