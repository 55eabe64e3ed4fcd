"""Drawings of the example panels with their liner, laid out once."""

from functools import cache

from shapes import SHAPES, case, example

from app.brickwork.layout import Layout, lay_out
from app.drawing.drawing import Drawing
from app.drawing.views.bed import bed
from app.drawing.views.elevation import elevation
from app.drawing.views.sheets import sheet_view
from app.drawing.views.story_pole import story_pole
from app.liner.drift import drift
from app.liner.sheets import sheet_plan
from app.liner.values import Drift, SheetPlan
from app.panel.project import Day, Liner

CASES = ("b1", "b3", "door")
NAMES = (*CASES, *SHAPES)
VIEWS = ("elevation", "bed", "sheets", "story pole")


@cache
def laid(name: str) -> Layout:
    """The layout of a reference case or of a named example."""
    return lay_out(case(name) if name in CASES else example(name))


@cache
def liner_of(name: str) -> tuple[SheetPlan, Drift]:
    """Sheets and checkpoints of the same panel, liner and day as a project file has them when it says nothing."""
    return sheet_plan(laid(name), Liner()), drift(laid(name), Liner(), Day())


def drawn(view: str, name: str) -> Drawing:
    """One view of one panel with everything on it."""
    layout, (plan, movement) = laid(name), liner_of(name)
    match view:
        case "elevation":
            return elevation(layout, plan=plan, drift=movement)
        case "bed":
            return bed(layout, plan=plan, drift=movement)
        case "sheets":
            return sheet_view(layout, plan, drift=movement)
    return story_pole(layout)
