"""The walking lanes on the bed: what stays open while brick is set."""

from collections.abc import Sequence

from app.brickwork.layout import Layout
from app.drawing.drawing import Drawing
from app.drawing.scales import QUARTER_INCH, Scale
from app.drawing.scene import Scene
from app.drawing.views.assemble import assemble
from app.drawing.views.bed import WORDS
from app.site.lane_values import Lanes

LAYERS = (
    "concrete",
    "brick",
    "cuts",
    "lanes",
    "openings",
    "outline",
    "pole",
    "tape",
    "dimensions",
    "orientation",
    "title",
    "bed_work_key",
)
"""From the lowest up; a lane runs under the openings that it crosses, so that their words can be read."""


def placing_view(
    layout: Layout,
    lanes: Lanes,
    *,
    scale: Scale = QUARTER_INCH,
    unit: str = "in",
    title: str = "",
    layers: Sequence[str] = LAYERS,
) -> Drawing:
    """The lanes of one panel as seen from its foot; the bare brick where none is needed.

    Raises KeyError for a name that is no layer.
    """
    count = len(lanes.lanes)
    named = title or f"{layout.panel.mark}, walking lanes: {count or 'none'}"
    return assemble(Scene(layout, "bed", scale, unit=unit, title=named, words=WORDS, lanes=lanes), layers)
