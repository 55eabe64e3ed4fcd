"""Give a zone's region by its values. Fields: zone (its mark), mark (blank: as it is), shape and its fields."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.panel.edit import Edit
from app.panel.form import Form
from app.panel.form_shapes import zone_region
from app.panel.marks import marked, replaced
from app.panel.shape_words import said_shape
from app.panel.shapes import Polygon, Rect
from app.panel.values import Band, Panel


@dataclass(frozen=True, slots=True)
class PlaceZone(Edit):
    name: ClassVar[str] = "place_zone"
    zone: str
    region: Rect | Polygon | Band
    mark: str = ""

    @classmethod
    def read(cls, form: Form) -> Self:
        return cls(form.text("zone", "the zone's mark"), zone_region(form), form.optional_text("mark") or "")

    def label(self, _panel: Panel, unit: str = "in", /) -> str:
        renamed = f", renamed {self.mark}" if self.mark not in ("", self.zone) else ""
        return f"Set {self.zone} to {said_shape(self.region, unit)}{renamed}"

    def changed(self, panel: Panel) -> Panel:
        old = marked(panel.zones, self.zone, "zone")
        new = replace(old, region=self.region, mark=self.mark or old.mark)
        return replace(panel, zones=replaced(panel.zones, old, new))


EDIT = PlaceZone
