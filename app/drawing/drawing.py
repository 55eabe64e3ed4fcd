"""A whole drawing: a panel's marks in layers, with room around for the pole, the tape and the words."""

from dataclasses import dataclass

from app.drawing.marks import Layer
from app.drawing.scales import Margins, Scale


@dataclass(frozen=True, slots=True)
class Drawing:
    """Layers from the lowest up; width and height of what is drawn in inches, margins around it in mm of paper."""

    title: str
    words: str
    width: float
    height: float
    margins: Margins
    scale: Scale
    layers: tuple[Layer, ...]

    @property
    def paper(self) -> tuple[float, float]:
        """Width and height of the whole drawing on paper, mm."""
        around = self.margins
        return (
            self.width * self.scale.mm_per_inch + around.left + around.right,
            self.height * self.scale.mm_per_inch + around.bottom + around.top,
        )

    @property
    def view_box(self) -> tuple[float, float, float, float]:
        """Left, top, width and height in inches with y down from the panel's top: what an editor's svg shows."""
        around, inches = self.margins, self.scale.inches_per_mm
        wide, high = self.paper
        return -around.left * inches, -around.top * inches, wide * inches, high * inches

    def layer(self, name: str) -> Layer:
        """The layer of that name; raises KeyError for another."""
        for layer in self.layers:
            if layer.name == name:
                return layer
        raise KeyError(f"layer {name!r} of {self.title!r}: expected one of {[layer.name for layer in self.layers]}")
