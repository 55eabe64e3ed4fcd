"""The Liner screen: the sheets of one panel as they lie, what is cut, and where laying starts."""

from typing import Annotated
from urllib.parse import urlencode
from uuid import uuid4

from fastapi import APIRouter, Query
from starlette.requests import Request
from starlette.responses import HTMLResponse, Response

from app.panel.faults import Refused
from app.panel.laying import Laying
from app.storage import reading, writing
from app.web.database import Database, Now
from app.web.forms import Form, then, whole_number
from app.web.liner_view import LaidNotice, LinerPart, changed_notice, form_of, page_of, results_of
from app.web.pages import show
from app.web.person import Person
from app.workflow.compute import compute
from app.workflow.loading import LoadedPanel, load_panel
from app.workflow.opening import Connections
from app.workflow.panel_edits import AskedEdit, edit_panel
from app.workflow.refusals import Stale

SINCE = "Somebody changed how the sheets are laid since you opened the page, so it was left as it is now."

router = APIRouter(prefix="/panels/{panel_id}/liner", include_in_schema=False)

Word = Annotated[str, Query(max_length=40)]


@router.get("")
def liner(panel_id: str, database: Database, corner: Word = "", direction: Word = "") -> HTMLResponse:
    """The page; after a change without script its address says how the sheets were laid before."""
    loaded = _loaded(panel_id, database)
    notice = changed_notice(Laying(corner, direction), loaded.panel.laying)
    return show("liner.html", page_of(loaded, compute(loaded.project, loaded.wall, loaded.panel), notice))


@router.post("")
def lay(panel_id: str, request: Request, form: Form, database: Database, now: Now, person: Person) -> Response:
    """Another corner or direction: an edit like any other, laid out before it is kept."""
    is_part = request.headers.get("hx-request") == "true"
    try:
        before = _edited(panel_id, form, database, now, person)
    except Refused as refused:
        if not is_part:
            raise
        words = "; ".join(f"{fault.path}: found {fault.found}, expected {fault.expected}" for fault in refused.faults)
        return _answer(panel_id, database, LaidNotice(words, True), 422, has_form=True)
    except Stale:
        if not is_part:
            raise
        return _answer(panel_id, database, LaidNotice(SINCE, True), 412, has_form=True)
    if is_part:
        return _answer(panel_id, database, None, before=before, has_form=form.get("undo") == "yes")
    return then(f"/panels/{panel_id}/liner?{_query(before)}")


def _edited(panel_id: str, form: Form, database: Connections, now: Now, person: str) -> Laying:
    """Makes the edit; how the sheets were laid before it."""
    values = {name: form.get(name, "") for name in ("corner", "direction")}
    asked = AskedEdit("set_laying", values, whole_number(form, "base_revision"), uuid4().hex, person, on_top=True)
    with writing(database) as session:
        before = load_panel(session, panel_id)
        edit_panel(session, before, asked, now)
        after = load_panel(session, panel_id)
        compute(after.project, after.wall, after.panel)
    return before.panel.laying


def _answer(
    panel_id: str,
    database: Connections,
    notice: LaidNotice | None,
    status: int = 200,
    *,
    before: Laying | None = None,
    has_form: bool = False,
) -> HTMLResponse:
    """The part to repaint; with `before` it says what changed, with `has_form` the choices follow too."""
    loaded = _loaded(panel_id, database)
    told = changed_notice(before, loaded.panel.laying) if before else notice
    results = results_of(loaded, compute(loaded.project, loaded.wall, loaded.panel), told)
    return show("liner_answer.html", LinerPart(results, form_of(loaded) if has_form else None), status)


def _loaded(panel_id: str, database: Connections) -> LoadedPanel:
    with reading(database) as session:
        return load_panel(session, panel_id)


def _query(before: Laying) -> str:
    return urlencode({"corner": before.corner, "direction": before.direction})
