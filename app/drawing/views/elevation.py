"""The panel's face as it will stand, seen from outside."""

from collections.abc import Sequence

from app.brickwork.layout import Layout
from app.drawing.drawing import Drawing
from app.drawing.scales import QUARTER_INCH, Scale
from app.drawing.scene import Scene
from app.drawing.views.assemble import assemble
from app.liner.values import Drift, SheetPlan
from app.panel.blend import Blend

NO_BLEND = Blend()

WORDS = "FACE, seen from outside"

LAYERS = (
    "concrete",
    "openings",
    "brick",
    "cuts",
    "outline",
    "letters",
    "small",
    "sizes",
    "sheets",
    "sheet_numbers",
    "pole",
    "tape",
    "dimensions",
    "checkpoints",
    "orientation",
    "title",
    "key",
)
"""From the lowest up."""

COLOURED = (
    "concrete",
    "openings",
    "blend",
    "outline",
    "pole",
    "tape",
    "dimensions",
    "orientation",
    "title",
    "blend_key",
)
"""The face in the colours of a blend, for who sets the bricks, instead of what is cut and laid."""


def elevation(
    layout: Layout,
    *,
    plan: SheetPlan | None = None,
    drift: Drift | None = None,
    scale: Scale = QUARTER_INCH,
    unit: str = "in",
    title: str = "",
    layers: Sequence[str] = LAYERS,
    blend: Blend = NO_BLEND,
) -> Drawing:
    """The face elevation of one panel; lengths in words in `unit`, "in" or "mm"; its colours with `COLOURED`.

    An empty brick field gives the panel without brick. Raises KeyError for a name that is no layer.
    """
    scene = Scene(
        layout, "face", scale, plan, drift, unit, title or f"{layout.panel.mark}, elevation", WORDS, None, blend
    )
    return assemble(scene, layers)
