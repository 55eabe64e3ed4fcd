"""A panel's drawings as they lie on their sheets, each with the words that stand for it."""

from collections.abc import Callable
from dataclasses import dataclass

from app.documents.panel_results import PanelResults
from app.documents.submittal_packing import packed
from app.documents.submittal_paper import Placed, fitting_scale, placed, scales_for
from app.drawing.drawing import Drawing
from app.drawing.lettering import with_fractions
from app.drawing.scales import Scale, SheetSize
from app.drawing.svg import svg_document
from app.drawing.views.assemble import AROUND
from app.drawing.views.bed import bed
from app.drawing.views.elevation import LAYERS, elevation
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
    """Elevation, bed view and sheet plan of one panel at one scale; `counted` are its counts in words."""
    scale = panel_scale(results, unit, sheet)
    return tuple(_sheet_drawing(name, draw(results, scale, unit), sheet, counted) for name, draw in VIEWS.items())


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
