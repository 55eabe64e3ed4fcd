"""Remove a zone: the field's brickwork, or the zone below, shows again. Field: zone (its mark)."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.panel.edit import Edit
from app.panel.form import Form
from app.panel.marks import marked, without
from app.panel.values import Panel


@dataclass(frozen=True, slots=True)
class RemoveZone(Edit):
    name: ClassVar[str] = "remove_zone"
    zone: str

    @classmethod
    def read(cls, form: Form) -> Self:
        return cls(form.text("zone", "the zone's mark"))

    def label(self, _panel: Panel, _unit: str = "in", /) -> str:
        return f"Remove zone {self.zone}"

    def changed(self, panel: Panel) -> Panel:
        return replace(panel, zones=without(panel.zones, marked(panel.zones, self.zone, "zone")))


EDIT = RemoveZone
