"""Join the panel to its wall again: courses and bond run on from the neighbours. No fields."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.panel.edit import Edit
from app.panel.faults import Fault, Refused
from app.panel.form import Form
from app.panel.values import Panel
from app.panel.wording import quoted


@dataclass(frozen=True, slots=True)
class JoinWall(Edit):
    """A start of the field's bond that was typed goes: the wall's takes its place."""

    name: ClassVar[str] = "join_wall"

    @classmethod
    def read(cls, _form: Form) -> Self:
        return cls()

    def label(self, panel: Panel, _unit: str = "in", /) -> str:
        return f"Join {panel.mark} to the wall"

    def changed(self, panel: Panel) -> Panel:
        if not panel.released and panel.field.origin is None:
            found = f"{quoted(panel.mark)} joined to the wall already"
            raise Refused([Fault("released", found, "a panel that is released or whose bond has a start of its own")])
        return replace(panel, released=False, field=replace(panel.field, origin=None))


EDIT = JoinWall
