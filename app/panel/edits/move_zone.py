"""Move a zone. Fields: zone (its mark), dx to the right, dy up; blank is 0."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.lengths import Length
from app.panel.edit import Edit
from app.panel.faults import Fault, Refused
from app.panel.form import Form
from app.panel.marks import marked, replaced
from app.panel.moving import moved_region
from app.panel.values import Band, Panel
from app.panel.wording import said_move


@dataclass(frozen=True, slots=True)
class MoveZone(Edit):
    name: ClassVar[str] = "move_zone"
    zone: str
    dx: Length = Length(0)  # noqa: RUF009 - Length is frozen
    dy: Length = Length(0)  # noqa: RUF009

    @classmethod
    def read(cls, form: Form) -> Self:
        dx, dy = form.optional_length("dx"), form.optional_length("dy")
        return cls(form.text("zone", "the zone's mark"), dx or Length(0), dy or Length(0))

    def label(self, _panel: Panel, unit: str = "in", /) -> str:
        return f"Move zone {self.zone} {said_move(self.dx, self.dy, unit)}"

    def changed(self, panel: Panel) -> Panel:
        old = marked(panel.zones, self.zone, "zone")
        if isinstance(old.region, Band):
            raise Refused([Fault("zone", f"{self.zone}, a band of courses", "a rectangle or a polygon")])
        new = replace(old, region=moved_region(old.region, self.dx, self.dy))
        return replace(panel, zones=replaced(panel.zones, old, new))


EDIT = MoveZone
