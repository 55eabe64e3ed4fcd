"""Say how sheets are laid. Fields: corner (on the bed, where the first sheet lies), direction (across or up)."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.panel.edit import Edit
from app.panel.form import Form
from app.panel.laying import CORNERS, DIRECTIONS, Laying
from app.panel.values import Panel

WAYS = {"across": "in rows across", "up": "in columns up"}


@dataclass(frozen=True, slots=True)
class SetLaying(Edit):
    name: ClassVar[str] = "set_laying"
    corner: str
    direction: str

    @classmethod
    def read(cls, form: Form) -> Self:
        return cls(form.choice("corner", CORNERS), form.choice("direction", DIRECTIONS))

    def label(self, _panel: Panel, _unit: str = "in", /) -> str:
        return f"Lay sheets from {self.corner}, {WAYS.get(self.direction, self.direction)}"

    def changed(self, panel: Panel) -> Panel:
        return replace(panel, laying=Laying(self.corner, self.direction))


EDIT = SetLaying
