"""Set brick and bond of a part of the face. Fields: part (`field` or a zone's mark), size, bond."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.panel.edit import Edit
from app.panel.face_parts import PART, part_work, with_work
from app.panel.form import Form
from app.panel.values import Panel


@dataclass(frozen=True, slots=True)
class SetBrickwork(Edit):
    name: ClassVar[str] = "set_brickwork"
    part: str
    size: str
    bond: str

    @classmethod
    def read(cls, form: Form) -> Self:
        return cls(form.text("part", PART), form.choice("size", form.sizes), form.choice("bond", form.bonds))

    def label(self, panel: Panel, _unit: str = "in", /) -> str:
        old = part_work(panel, self.part)
        if old and old.size == self.size:
            return f"Set bond of {self.part} to {self.bond}"
        if old and old.bond == self.bond:
            return f"Set brick of {self.part} to {self.size}"
        return f"Set {self.part} to {self.size} in {self.bond}"

    def changed(self, panel: Panel) -> Panel:
        return with_work(panel, self.part, lambda work: replace(work, size=self.size, bond=self.bond))


EDIT = SetBrickwork
