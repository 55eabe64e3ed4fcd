"""Drawings of the Liner screen: sheets as they lie, and sheets to cut."""

from dataclasses import replace

from app.drawing.drawing import Drawing
from app.drawing.scales import Margins, Scale
from app.drawing.views.sheets import LAYERS, WITH_WORK, sheet_view
from app.drawing.views.sheets_to_cut import sheets_to_cut_view
from app.web.inline_drawing import InlineDrawing, inline_drawing
from app.web.words import counted
from app.workflow.compute import Computed

PAPER_MM = (290.0, 240.0)
"""The plan is made as if for this much paper, so that its letters read well in a window."""

SHOWN = tuple(layer for layer in LAYERS if layer not in ("title", "checkpoints"))

ROW_MM = 262.0
"""A row of sheets to cut is as wide as the page where it is read."""

AROUND = Margins(left=4.0, right=8.0, bottom=8.0, top=4.0)
"""The page itself has the title."""


def plan_drawing(computed: Computed) -> InlineDrawing:
    """The sheets as they lie on the bed."""
    panel, around = computed.layout.panel, WITH_WORK
    room = PAPER_MM[0] - around.left - around.right, PAPER_MM[1] - around.bottom - around.top
    scale = Scale(max(panel.width * 25.4 / room[0], panel.height * 25.4 / room[1]), "to fit")
    work = computed.sheet_work
    drawn = sheet_view(computed.layout, computed.plan, work=work, scale=scale, unit=computed.unit, layers=SHOWN)
    sheets = counted(computed.plan.placed, "sheet")
    return inline_drawing(drawn, f"Sheet plan of panel {panel.mark}: {sheets}, seen from the foot of the bed")


def cut_drawing(computed: Computed) -> InlineDrawing | None:
    """Every stack of sheets that are cut alike drawn once; none where nothing is cut."""
    stacks, liner = computed.sheet_work.stacks, computed.given.liner
    if not stacks:
        return None
    drawn = sheets_to_cut_view(computed.layout, computed.plan, liner, stacks, unit=computed.unit, paper_mm=ROW_MM)
    label = f"Sheets to cut for panel {computed.layout.panel.mark}, as they lie on the bed"
    return inline_drawing(_untitled(drawn), label, hatched="cuts")


def _untitled(drawn: Drawing) -> Drawing:
    return replace(drawn, layers=tuple(layer for layer in drawn.layers if layer.name != "title"), margins=AROUND)
