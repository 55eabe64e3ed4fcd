"""Set the limits of pieces. Fields: smallest_cut, least_piece (blank: the default)."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.lengths import Length
from app.panel.edit import Edit
from app.panel.form import Form
from app.panel.values import Panel
from app.panel.wording import said


@dataclass(frozen=True, slots=True)
class SetLimits(Edit):
    name: ClassVar[str] = "set_limits"
    smallest_cut: Length | None = None
    least_piece: Length | None = None

    @classmethod
    def read(cls, form: Form) -> Self:
        return cls(form.optional_length("smallest_cut"), form.optional_length("least_piece"))

    def label(self, _panel: Panel, unit: str = "in", /) -> str:
        cut = "default" if self.smallest_cut is None else said(self.smallest_cut, unit)
        piece = "half bat" if self.least_piece is None else said(self.least_piece, unit)
        return f"Set smallest cut to {cut}, least piece to {piece}"

    def changed(self, panel: Panel) -> Panel:
        return replace(panel, smallest_cut=self.smallest_cut, least_piece=self.least_piece)


EDIT = SetLimits
