"""A panel's drawings as they lie on their sheets, each with the words that stand for it."""

from collections.abc import Callable
from dataclasses import dataclass

from app.brickwork.returns import returns
from app.documents.panel_results import PanelResults
from app.documents.submittal_packing import packed
from app.documents.submittal_paper import (
    Placed,
    fitting_scale,
    goes_onto,
    inner_room,
    placed,
    scales_for,
    shop_scales,
    wall_placed,
)
from app.documents.submittal_parts import DRAWINGS
from app.documents.submittal_shop import SAW_NAME, saw_drawings, shop_drawings
from app.drawing.drawing import Drawing
from app.drawing.lettering import with_fractions
from app.drawing.scales import Scale, SheetSize
from app.drawing.svg import svg_document
from app.drawing.views import return_details
from app.drawing.views.assemble import AROUND
from app.drawing.views.bed import bed
from app.drawing.views.elevation import LAYERS, elevation
from app.drawing.views.returns import returns_view
from app.drawing.views.sheets import sheet_view
from app.order.saw_values import SawList
from app.panel.project import Project

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


def sheet_drawings(
    results: PanelResults, project: Project, sheet: SheetSize, counted: str, parts: frozenset[str]
) -> tuple[SheetDrawing, ...]:
    """Elevation, bed view and sheet plan of one panel at one scale, then shop drawings, as the parts ask for them.

    A panel with returns has one more, at that scale or the next smaller at which it goes onto the sheet. `counted`
    are its counts in words.
    """
    drawn = _approved(results, project.length_unit, sheet) if DRAWINGS in parts else {}
    made = [sheet_drawing(name, drawing, _placed(name, drawing, sheet), counted) for name, drawing in drawn.items()]
    made += [
        sheet_drawing(name, drawing, wall_placed(drawing, sheet), counted)
        for name, drawing in shop_drawings(results, project, sheet, parts)
    ]
    return tuple(made)


def _approved(results: PanelResults, unit: str, sheet: SheetSize) -> dict[str, Drawing]:
    scale = panel_scale(results, unit, sheet)
    drawn = {name: draw(results, scale, unit) for name, draw in VIEWS.items()}
    if unfolded := _returns(results, scale, unit, sheet):
        drawn[RETURNS] = unfolded
        drawn[RETURN_DETAILS] = _details(results, unit, sheet)
    return drawn


def _returns(results: PanelResults, largest: Scale, unit: str, sheet: SheetSize) -> Drawing | None:
    if not returns(results.layout):
        return None
    scales = (scale for scale in scales_for(unit) if scale.ratio >= largest.ratio)
    drawings = (returns_view(results.layout, scale=scale, unit=unit) for scale in scales)
    return next((drawing for drawing in drawings if goes_onto(drawing, sheet)), None)


def _placed(name: str, drawing: Drawing, sheet: SheetSize) -> Placed:
    return wall_placed(drawing, sheet) if name == RETURN_DETAILS else placed(drawing, sheet)


def _details(results: PanelResults, unit: str, sheet: SheetSize) -> Drawing:
    """At the usual scale, or the next smaller at which all go onto the sheet."""
    room = inner_room(sheet)[0] - return_details.AROUND.left - return_details.AROUND.right
    scales = shop_scales(unit, return_details.usual_scale(unit))
    drawings = (
        return_details.return_details(results.layout, scale=scale, unit=unit, paper_mm=room) for scale in scales
    )
    drawing = next(drawings)
    while not goes_onto(drawing, sheet) and (smaller := next(drawings, None)):
        drawing = smaller
    return drawing


def sheet_drawing(name: str, drawing: Drawing, at: Placed, counted: str) -> SheetDrawing:
    """A drawing that lies there; `counted` is said behind its title."""
    scale = with_fractions(drawing.scale.words)
    return SheetDrawing(
        name=name,
        title=drawing.title,
        words=drawing.words,
        alt=f"{drawing.title}. {drawing.words}. Scale {drawing.scale.words}. {counted}.",
        scale=scale,
        svg=packed(svg_document(drawing, PALETTE)),
        at=at,
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

RETURNS, RETURN_DETAILS = "Returns", "Return details"
"""One sheet more for a panel that has any, and one for what can be read only near by."""


def saw_sheets(saw: SawList, project: Project, sheet: SheetSize) -> tuple[SheetDrawing, ...]:
    """The saw station of all panels together; no sheet where nothing is cut."""
    made = enumerate(saw_drawings(saw, project, sheet), start=1)
    return tuple(
        sheet_drawing(SAW_NAME if k == 1 else f"{SAW_NAME}, {k}", drawing, wall_placed(drawing, sheet), "")
        for k, drawing in made
    )
