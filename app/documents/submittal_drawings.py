"""A panel's drawings as they lie on their sheets, each with the words that stand for it."""

from collections.abc import Callable
from dataclasses import dataclass

from app.brickwork.returns import returns
from app.documents.panel_results import PanelResults
from app.documents.submittal_packing import packed
from app.documents.submittal_paper import Placed, fitting_scale, goes_onto, placed, scales_for
from app.drawing.drawing import Drawing
from app.drawing.lettering import with_fractions
from app.drawing.scales import Scale, SheetSize
from app.drawing.svg import svg_document
from app.drawing.views.assemble import AROUND
from app.drawing.views.bed import bed
from app.drawing.views.elevation import LAYERS, elevation
from app.drawing.views.returns import returns_view
from app.drawing.views.sheets import sheet_view

PALETTE = "white"

BED_LAYERS = tuple(name for name in LAYERS if not name.startswith("sheet"))
"""Liner sheets have a drawing of their own."""


@dataclass(frozen=True, slots=True)
class SheetDrawing:
    """One drawing sheet: `name` is unique in its panel, `alt` says in words what the drawing shows."""

    name: str
    title: str
    words: str
    alt: str
    scale: str
    svg: str
    at: Placed


def panel_scale(results: PanelResults, unit: str, sheet: SheetSize) -> Scale:
    """The scale of all drawings of a panel; raises NoScaleFits as `fitting_scale` does."""
    panel = results.panel
    return fitting_scale((panel.width, panel.height), AROUND, sheet, scales_for(unit), panel.mark)


def sheet_drawings(results: PanelResults, unit: str, sheet: SheetSize, counted: str) -> tuple[SheetDrawing, ...]:
    """Elevation, bed view and sheet plan of one panel at one scale; `counted` are its counts in words.

    A panel with returns has one more, at that scale or the next smaller at which it goes onto the sheet.
    """
    scale = panel_scale(results, unit, sheet)
    drawn = {name: draw(results, scale, unit) for name, draw in VIEWS.items()}
    if unfolded := _returns(results, scale, unit, sheet):
        drawn[RETURNS] = unfolded
    return tuple(_sheet_drawing(name, drawing, sheet, counted) for name, drawing in drawn.items())


def _returns(results: PanelResults, largest: Scale, unit: str, sheet: SheetSize) -> Drawing | None:
    if not returns(results.layout):
        return None
    scales = (scale for scale in scales_for(unit) if scale.ratio >= largest.ratio)
    drawings = (returns_view(results.layout, scale=scale, unit=unit) for scale in scales)
    return next((drawing for drawing in drawings if goes_onto(drawing, sheet)), None)


def _sheet_drawing(name: str, drawing: Drawing, sheet: SheetSize, counted: str) -> SheetDrawing:
    scale = with_fractions(drawing.scale.words)
    return SheetDrawing(
        name=name,
        title=drawing.title,
        words=drawing.words,
        alt=f"{drawing.title}. {drawing.words}. Scale {drawing.scale.words}. {counted}.",
        scale=scale,
        svg=packed(svg_document(drawing, PALETTE)),
        at=placed(drawing, sheet),
    )


def _elevation(results: PanelResults, scale: Scale, unit: str) -> Drawing:
    return elevation(results.layout, scale=scale, unit=unit)


def _bed(results: PanelResults, scale: Scale, unit: str) -> Drawing:
    layout, plan, drift = results.layout, results.plan, results.drift
    return bed(layout, plan=plan, drift=drift, scale=scale, unit=unit, layers=BED_LAYERS)


def _sheets(results: PanelResults, scale: Scale, unit: str) -> Drawing:
    return sheet_view(results.layout, results.plan, drift=results.drift, scale=scale, unit=unit)


VIEWS: dict[str, Callable[[PanelResults, Scale, str], Drawing]] = {
    "Elevation": _elevation,
    "Bed view": _bed,
    "Sheet plan": _sheets,
}
"""A sheet each, in this order; the elevation for the architect is without liner and checkpoints."""

RETURNS = "Returns"
"""One sheet more for a panel that has any."""
