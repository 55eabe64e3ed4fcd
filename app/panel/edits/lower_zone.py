"""Lay a zone under the one before: where both are, the other's brickwork shows. Field: zone (its mark)."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.panel.edit import Edit
from app.panel.form import Form
from app.panel.values import Panel
from app.panel.zone_order import neighbour, stepped


@dataclass(frozen=True, slots=True)
class LowerZone(Edit):
    name: ClassVar[str] = "lower_zone"
    zone: str

    @classmethod
    def read(cls, form: Form) -> Self:
        return cls(form.text("zone", "the zone's mark"))

    def label(self, panel: Panel, _unit: str = "in", /) -> str:
        other = neighbour(panel.zones, self.zone, -1)
        return f"Lower zone {self.zone}" + (f" under {other}" if other else "")

    def changed(self, panel: Panel) -> Panel:
        return replace(panel, zones=stepped(panel.zones, self.zone, -1))


EDIT = LowerZone
