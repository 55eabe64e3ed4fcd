"""What a gesture would change, while the hand rests: the drawing as it would be, and what that costs. Saves nothing."""

from dataclasses import dataclass

from fastapi import APIRouter
from starlette.responses import HTMLResponse

from app.panel.faults import Refused
from app.storage import reading
from app.web.database import Database
from app.web.editor_costs import Cost, costs_of
from app.web.editor_picture import Part
from app.web.editor_show import laid_out
from app.web.editor_view import hidden_layers
from app.web.forms import OWN_FIELDS, Form, whole_number
from app.web.pages import show
from app.workflow.loading import load_panel
from app.workflow.panel_edits import as_edited

router = APIRouter(prefix="/panels/{panel_id}", include_in_schema=False)


@dataclass(frozen=True, slots=True)
class PreviewPart:
    """The groups of the drawing that would be others, the figures, and why it cannot be where it cannot."""

    parts: tuple[Part, ...] = ()
    costs: tuple[Cost, ...] = ()
    why_not: tuple[str, ...] = ()


@router.post("/preview")
def preview(panel_id: str, form: Form, database: Database) -> HTMLResponse:
    """The panel as an edit would make it; nothing where the page shows another revision than there is."""
    with reading(database) as session:
        loaded = load_panel(session, panel_id)
    if whole_number(form, "base_revision") != loaded.revision:
        return show("editor_preview.html", PreviewPart())
    try:
        edited = as_edited(loaded, form.get("edit", ""), {k: v for k, v in form.items() if k not in OWN_FIELDS})
    except Refused as refused:
        return show("editor_preview.html", PreviewPart(why_not=_told(refused)))
    before, after = laid_out(loaded), laid_out(edited)
    hidden = hidden_layers(form.get("hidden", "").split())
    changed = after.picture(hidden).less(before.picture(hidden)).parts
    return show("editor_preview.html", PreviewPart(changed, costs_of(before.computed, after.computed)))


def _told(refused: Refused) -> tuple[str, ...]:
    return tuple(f"Not possible: found {fault.found}; expected {fault.expected}." for fault in refused.faults)
