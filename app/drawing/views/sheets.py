"""The liner sheets on the bed, numbered in laying order."""

from collections.abc import Sequence
from dataclasses import replace

from app.brickwork.layout import Layout
from app.drawing.drawing import Drawing
from app.drawing.scales import QUARTER_INCH, Scale
from app.drawing.scene import Scene
from app.drawing.views.assemble import AROUND, assemble
from app.liner.values import Drift, SheetPlan
from app.liner.work_values import SheetWork

LAYERS = (
    "concrete",
    "openings",
    "sheet_grounds",
    "sheet_laps",
    "sheets",
    "sheet_cuts",
    "outline",
    "edge_pieces",
    "sheet_numbers",
    "sheet_stacks",
    "pole",
    "tape",
    "dimensions",
    "checkpoints",
    "orientation",
    "title",
    "sheet_key",
    "sheet_work_key",
)
"""From the lowest up."""

DETAILS = ("sheet_fixes", "hold_downs")
"""Layers for a large scale; they crowd a whole panel at a quarter of an inch to the foot, and lists say the same."""

WITH_WORK = replace(AROUND, bottom=AROUND.bottom + 5.0)
"""Room for a second line of the key, mm."""

WORDS = "BED VIEW, mirrored: back of panel, seen standing at its foot"


def sheet_view(
    layout: Layout,
    plan: SheetPlan,
    *,
    drift: Drift | None = None,
    work: SheetWork | None = None,
    scale: Scale = QUARTER_INCH,
    unit: str = "in",
    title: str = "",
    layers: Sequence[str] = LAYERS,
) -> Drawing:
    """The sheet plan of one panel, as seen on the bed from its foot; trimmed sheets with the size to cut to.

    With `work` also laps, cuts, stacks and edge pieces; `DETAILS` may be added to `layers`. A plan without sheets gives
    the bare panel. Raises KeyError for a name that is no layer.
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
        work,
    )
    return assemble(scene, layers, AROUND if work is None else WITH_WORK)
