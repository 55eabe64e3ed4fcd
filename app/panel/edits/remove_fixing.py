"""Remove a fixing line. Field: fixing (its place in the list, from 0)."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.panel.edit import Edit
from app.panel.faults import Fault, Refused
from app.panel.form import Form
from app.panel.values import Panel


@dataclass(frozen=True, slots=True)
class RemoveFixing(Edit):
    """Told to people by its place from 1, as in the history."""

    name: ClassVar[str] = "remove_fixing"
    fixing: int

    @classmethod
    def read(cls, form: Form) -> Self:
        return cls(form.number("fixing"))

    def label(self, _panel: Panel, _unit: str = "in", /) -> str:
        return f"Remove fixing {self.fixing + 1}"

    def changed(self, panel: Panel) -> Panel:
        k, count = self.fixing, len(panel.fixings)
        if not 0 <= k < count:
            expected = f"one of the fixing lines, 0 to {count - 1}" if count else "a panel with fixing lines"
            raise Refused([Fault("fixing", str(k), expected)])
        return replace(panel, fixings=(*panel.fixings[:k], *panel.fixings[k + 1 :]))


EDIT = RemoveFixing
