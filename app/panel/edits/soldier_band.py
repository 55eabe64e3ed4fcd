"""Set a band of soldiers over an opening. Field: opening (its mark)."""

from dataclasses import dataclass, replace
from math import ceil
from typing import ClassVar, Self

from app.lengths import Length
from app.panel.edit import Edit
from app.panel.faults import Fault, Refused
from app.panel.form import Form
from app.panel.geometry import brick_field, shape_polygon
from app.panel.marks import free_mark, marked
from app.panel.shapes import Rect
from app.panel.size import BrickSize
from app.panel.tolerance import TOLERANCE
from app.panel.values import Brickwork, Opening, Panel, Zone
from app.panel.wording import one_of, quoted

BOND = "soldier"


@dataclass(frozen=True, slots=True)
class SoldierBand(Edit):
    """One row of the field's brick on end, from the first course line over the opening's head.

    Its height is one soldier with its joint: three courses of modular brick, which leaves the coursing above as it was
    (arithmetic; the face per US Navy manual 14069, fig. 7-53). It reaches half a head module or more past each jamb:
    as many whole soldiers as that takes, centred on the opening.
    """

    name: ClassVar[str] = "soldier_band"
    opening: str
    sizes: tuple[BrickSize, ...]

    @classmethod
    def read(cls, form: Form) -> Self:
        return cls(form.text("opening", "the opening's mark"), tuple((form.sizes or {}).values()))

    def label(self, panel: Panel, _unit: str = "in", /) -> str:
        return f"Add soldier band {free_mark('S', panel.zones)} over {self.opening}"

    def changed(self, panel: Panel) -> Panel:
        opening = marked(panel.openings, self.opening, "opening")
        size = self._size(panel)
        zone = Zone(free_mark("S", panel.zones), _band(panel, opening, size), Brickwork(size.name, BOND))
        return replace(panel, zones=(*panel.zones, zone))

    def _size(self, panel: Panel) -> BrickSize:
        for size in self.sizes:
            if size.name == panel.field.size:
                return size
        known = one_of([size.name for size in self.sizes], panel.field.size)
        raise Refused([Fault("field.size", quoted(panel.field.size), known)])


def _band(panel: Panel, opening: Opening, size: BrickSize) -> Rect:
    left, _, right, head = shape_polygon(opening.shape).bounds
    joint = size.head_joint.inches
    soldier = size.height.inches + joint
    count = ceil((right - left + size.head_module + joint - TOLERANCE) / soldier)
    x = (left + right - count * soldier + joint) / 2
    y = _course_line(panel, head, size)
    inches = (x, y, count * soldier, size.head_module)
    return Rect(*map(Length.from_inches, inches))


def _course_line(panel: Panel, head: float, size: BrickSize) -> float:
    """The first course line of the field at or above the brick's edge over a head, inches."""
    joint = size.head_joint.inches
    margin = joint if panel.margin is None else panel.margin.inches
    field = brick_field(panel, joint)
    start = panel.field.origin[1].inches if panel.field.origin else 0.0 if field.is_empty else float(field.bounds[1])
    return start + ceil((head + margin - start - TOLERANCE) / size.gauge) * size.gauge


EDIT = SoldierBand
