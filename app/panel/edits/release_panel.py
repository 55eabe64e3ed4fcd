"""Release the panel from its wall: its bond starts on its own and no longer runs on from the neighbours. No fields."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.panel.edit import Edit
from app.panel.faults import Fault, Refused
from app.panel.form import Form
from app.panel.values import Panel
from app.panel.wording import quoted


@dataclass(frozen=True, slots=True)
class ReleasePanel(Edit):
    """A start of the bond that was typed stays as it is."""

    name: ClassVar[str] = "release_panel"

    @classmethod
    def read(cls, _form: Form) -> Self:
        return cls()

    def label(self, panel: Panel, _unit: str = "in", /) -> str:
        return f"Release {panel.mark} from the wall"

    def changed(self, panel: Panel) -> Panel:
        if panel.released:
            found = f"{quoted(panel.mark)} released from the wall already"
            raise Refused([Fault("released", found, "a panel that is joined to its wall")])
        return replace(panel, released=True)


EDIT = ReleasePanel
