"""What you see standing at the panel's foot, looking down at its back."""

from collections.abc import Sequence

from app.brickwork.layout import Layout
from app.drawing.drawing import Drawing
from app.drawing.scales import QUARTER_INCH, Scale
from app.drawing.scene import Scene
from app.drawing.views.assemble import assemble
from app.drawing.views.elevation import LAYERS
from app.liner.values import Drift, SheetPlan

WORDS = "BED VIEW, mirrored: back of panel, seen standing at its foot"


def bed(
    layout: Layout,
    *,
    plan: SheetPlan | None = None,
    drift: Drift | None = None,
    scale: Scale = QUARTER_INCH,
    unit: str = "in",
    title: str = "",
    layers: Sequence[str] = LAYERS,
) -> Drawing:
    """The bed view of one panel: every mark of the face mirrored, words upright, the tape from the bed's lower left.

    An empty brick field gives the panel without brick. Raises KeyError for a name that is no layer.
    """
    scene = Scene(layout, "bed", scale, plan, drift, unit, title or f"{layout.panel.mark}, bed view", WORDS)
    return assemble(scene, layers)
