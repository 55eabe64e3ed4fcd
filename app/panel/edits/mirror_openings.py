"""Mirror openings about an upright line. Fields: marks (with commas between), axis (blank: the panel's middle)."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.lengths import Length
from app.panel.edit import Edit
from app.panel.extents import mirrored
from app.panel.form import Form
from app.panel.marks import all_marked
from app.panel.values import Panel
from app.panel.wording import said


@dataclass(frozen=True, slots=True)
class MirrorOpenings(Edit):
    """How the brick ends at a left side goes with it to the right."""

    name: ClassVar[str] = "mirror_openings"
    marks: tuple[str, ...]
    axis: Length | None = None

    @classmethod
    def read(cls, form: Form) -> Self:
        return cls(form.texts("marks", "the openings' marks with commas between"), form.optional_length("axis"))

    def label(self, _panel: Panel, unit: str = "in", /) -> str:
        about = f"a line at {said(self.axis, unit)}" if self.axis else "the panel's middle"
        return f"Mirror {', '.join(self.marks)} about {about}"

    def changed(self, panel: Panel) -> Panel:
        meant = all_marked(panel.openings, self.marks, "marks")
        width = max((x.nm for x, _ in panel.outline), default=0)
        twice = 2 * self.axis.nm if self.axis else width
        turned = tuple(mirrored(one, twice) if one in meant else one for one in panel.openings)
        return replace(panel, openings=turned)


EDIT = MirrorOpenings
