"""Two states of one panel laid over each other: the later one drawn, what differs from the earlier marked."""

from app.brickwork.layout import Layout
from app.drawing.drawing import Drawing
from app.drawing.scales import Margins, Scale
from app.drawing.scene import Scene
from app.drawing.views.assemble import assemble
from app.drawing.views.elevation import WORDS

LAYERS = (
    "concrete",
    "openings",
    "brick",
    "cuts",
    "outline",
    "pole",
    "tape",
    "dimensions",
    "differences",
    "clouds",
    "orientation",
)
"""From the lowest up."""
AROUND = Margins(left=44.0, right=28.0, bottom=36.0, top=13.0)


def compare(earlier: Layout, later: Layout, *, scale: Scale, unit: str = "in", delta: str = "") -> Drawing:
    """The later state in the face frame; shapes that went or changed broken, those that came or changed heavy.

    With `delta`, the letter of the later release, clouds lie around all that differs.

    Both frames have their origin at the lower left of their own outline.
    """
    scene = Scene(later, "face", scale, None, None, unit, later.panel.mark, WORDS, earlier=earlier, delta=delta)
    return assemble(scene, LAYERS, AROUND)
