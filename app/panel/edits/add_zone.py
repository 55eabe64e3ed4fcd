"""Add a zone. Fields: mark (blank: the next free one), shape (rect, band, polygon) and its fields, size (blank: the
field's), bond."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.panel.edit import Edit
from app.panel.form import Form
from app.panel.form_shapes import zone_region
from app.panel.marks import free_mark
from app.panel.shapes import Polygon, Rect
from app.panel.values import Band, Brickwork, Panel, Zone


@dataclass(frozen=True, slots=True)
class AddZone(Edit):
    name: ClassVar[str] = "add_zone"
    region: Rect | Polygon | Band
    size: str
    bond: str
    mark: str = ""

    @classmethod
    def read(cls, form: Form) -> Self:
        size = form.choice("size", form.sizes) if form.has("size") else ""
        bond = form.choice("bond", form.bonds)
        return cls(zone_region(form), size, bond, form.optional_text("mark") or "")

    def label(self, panel: Panel, _unit: str = "in", /) -> str:
        return f"Add zone {self._mark(panel)} in {self.bond}"

    def changed(self, panel: Panel) -> Panel:
        zone = Zone(self._mark(panel), self.region, Brickwork(self.size or panel.field.size, self.bond))
        return replace(panel, zones=(*panel.zones, zone))

    def _mark(self, panel: Panel) -> str:
        return self.mark or free_mark("Z", panel.zones)


EDIT = AddZone
