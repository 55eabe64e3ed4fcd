"""What a view is drawn from: the results, the scale, the frame."""

from dataclasses import dataclass
from typing import Literal

from app.brickwork.layout import Layout
from app.drawing.scales import QUARTER_INCH, Scale

Frame = Literal["face", "bed"]


@dataclass(frozen=True, slots=True)
class Scene:
    """One panel's results, and how they are to be drawn; `unit` is "in" or "mm"."""

    layout: Layout
    frame: Frame = "face"
    scale: Scale = QUARTER_INCH
    unit: str = "in"
    title: str = ""
    words: str = ""

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
