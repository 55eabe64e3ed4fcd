"""Take a finding as it is. Fields: code, about (as the finding says them), by (who accepts it), reason."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.panel.check_accepted import PARTS
from app.panel.edit import Edit
from app.panel.form import Form
from app.panel.values import Accepted, Panel


@dataclass(frozen=True, slots=True)
class AcceptFinding(Edit):
    """A finding that is accepted already gets the new name and reason."""

    name: ClassVar[str] = "accept_finding"
    code: str
    about: str
    by: str
    reason: str

    @classmethod
    def read(cls, form: Form) -> Self:
        return cls(*(form.line(name, expected, longest) for name, (expected, longest) in PARTS.items()))

    def label(self, _panel: Panel, _unit: str = "in", /) -> str:
        return f"Accept {self.code} of {self.about}, by {self.by}"

    def changed(self, panel: Panel) -> Panel:
        new = Accepted(self.code, self.about, self.by, self.reason)
        held = {(old.code, old.about): old for old in panel.accepted} | {(new.code, new.about): new}
        return replace(panel, accepted=tuple(held.values()))


EDIT = AcceptFinding
