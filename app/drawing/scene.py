"""What a view is drawn from: the results, the scale, the frame."""

from dataclasses import dataclass
from typing import Literal

from app.brickwork.layout import Layout
from app.drawing.scales import QUARTER_INCH, Scale
from app.liner.values import Checkpoint, Drift, SheetPlan
from app.liner.work_values import SheetWork
from app.panel.blend import Blend
from app.site.lane_values import Lanes
from app.site.pour_values import Pour

Frame = Literal["face", "bed"]


@dataclass(frozen=True, slots=True)
class Scene:
    """One panel's results, and how they are to be drawn; `unit` is "in" or "mm"; results of liner and of the work at
    the bed only where there are."""

    layout: Layout
    frame: Frame = "face"
    scale: Scale = QUARTER_INCH
    plan: SheetPlan | None = None
    drift: Drift | None = None
    unit: str = "in"
    title: str = ""
    words: str = ""
    work: SheetWork | None = None
    blend: Blend = Blend()  # noqa: RUF009 - Blend is frozen
    earlier: Layout | None = None
    delta: str = ""
    lanes: Lanes | None = None
    pour: Pour | None = None

    @property
    def width(self) -> float:
        return self.layout.panel.width

    @property
    def height(self) -> float:
        return self.layout.panel.height

    def mm(self, paper: float) -> float:
        """Inches of panel under so many millimetres of paper."""
        return paper * self.scale.inches_per_mm

    def across(self, x_face: float) -> float:
        """Where a face x stands in this view's frame: `x_bed = width - x_face`."""
        return self.width - x_face if self.frame == "bed" else x_face

    @property
    def hooks_right(self) -> bool:
        """Whether the tape hooks on at the right of this view: only on the bed, where laying may start there."""
        return self.frame == "bed" and self.plan is not None and self.plan.corner.endswith("right")

    def along(self, x_view: float) -> float:
        """What the tape reads at an x of this view, inches from its hook."""
        return self.width - x_view if self.hooks_right else x_view

    def checkpoints(self, axis: str) -> tuple[Checkpoint, ...]:
        """Checkpoints of one axis, "x" or "y"; none without drift."""
        return tuple(point for point in self.drift.checkpoints if point.axis == axis) if self.drift else ()
