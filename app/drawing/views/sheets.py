"""The liner sheets on the bed, numbered in laying order."""

from collections.abc import Sequence

from app.brickwork.layout import Layout
from app.drawing.drawing import Drawing
from app.drawing.scales import QUARTER_INCH, Scale
from app.drawing.scene import Scene
from app.drawing.views.assemble import assemble
from app.liner.values import Drift, SheetPlan

LAYERS = (
    "concrete",
    "openings",
    "sheet_grounds",
    "sheets",
    "outline",
    "sheet_numbers",
    "pole",
    "tape",
    "dimensions",
    "checkpoints",
    "orientation",
    "title",
    "sheet_key",
)
"""From the lowest up."""

WORDS = "BED VIEW, mirrored: back of panel, seen standing at its foot"


def sheet_view(
    layout: Layout,
    plan: SheetPlan,
    *,
    drift: Drift | None = None,
    scale: Scale = QUARTER_INCH,
    unit: str = "in",
    title: str = "",
    layers: Sequence[str] = LAYERS,
) -> Drawing:
    """The sheet plan of one panel, as seen on the bed from its foot; trimmed sheets with the size to cut to.

    A plan without sheets gives the bare panel. Raises KeyError for a name that is no layer.
    """
    scene = Scene(
        layout,
        "bed",
        scale,
        plan,
        drift,
        unit,
        title or f"{layout.panel.mark}, sheet plan: {plan.placed} sheets",
        WORDS,
    )
    return assemble(scene, layers)
