"""The pour on the bed: bands in order, first drop, vibrator points."""

from collections.abc import Sequence

from app.brickwork.layout import Layout
from app.drawing.drawing import Drawing
from app.drawing.scales import QUARTER_INCH, Scale
from app.drawing.scene import Scene
from app.drawing.views.assemble import assemble
from app.drawing.views.bed import WORDS
from app.site.pour_values import Pour

LAYERS = (
    "openings",
    "pour",
    "outline",
    "pole",
    "tape",
    "dimensions",
    "orientation",
    "title",
    "bed_work_key",
)
"""From the lowest up."""


def pour_view(
    layout: Layout,
    pour: Pour,
    *,
    scale: Scale = QUARTER_INCH,
    unit: str = "in",
    title: str = "",
    layers: Sequence[str] = LAYERS,
) -> Drawing:
    """The pour of one panel as seen from its foot; the bare panel for no concrete.

    Raises KeyError for a name that is no layer.
    """
    named = title or f"{layout.panel.mark}, pour: {len(pour.bands)} bands, {pour.insertions} insertions"
    return assemble(Scene(layout, "bed", scale, unit=unit, title=named, words=WORDS, pour=pour), layers)
