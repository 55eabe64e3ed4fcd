"""Take the acceptance of a finding back: it is open again. Fields: code, about (as the finding says them)."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.panel.edit import Edit
from app.panel.faults import Fault, Refused
from app.panel.form import Form
from app.panel.values import Panel
from app.panel.wording import one_of, quoted


@dataclass(frozen=True, slots=True)
class WithdrawAcceptance(Edit):
    name: ClassVar[str] = "withdraw_acceptance"
    code: str
    about: str

    @classmethod
    def read(cls, form: Form) -> Self:
        return cls(form.text("code", "the finding's code"), form.text("about", "what the finding is about"))

    def label(self, _panel: Panel, _unit: str = "in", /) -> str:
        return f"Withdraw acceptance of {self.code} of {self.about}"

    def changed(self, panel: Panel) -> Panel:
        kept = tuple(one for one in panel.accepted if (one.code, one.about) != (self.code, self.about))
        if len(kept) == len(panel.accepted):
            known = [f"{one.code} of {one.about}" for one in panel.accepted]
            wanted = f"{self.code} of {self.about}"
            raise Refused([Fault("about", quoted(wanted), f"an accepted finding: {one_of(known, wanted)}")])
        return replace(panel, accepted=kept)


EDIT = WithdrawAcceptance
