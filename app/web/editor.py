"""The panel editor: the page, its edits, undo and redo, and the parts that follow the pointer and the slider."""

from collections.abc import Callable, Mapping
from datetime import datetime
from typing import Annotated
from uuid import uuid4

from fastapi import APIRouter, Query
from starlette.requests import Request
from starlette.responses import Response

from app.documents.project_file import bond_names, sizes_of
from app.panel.edits import edit_from
from app.panel.faults import Refused
from app.panel.project import Project
from app.panel.values import Panel
from app.storage import reading, writing
from app.web.database import Database, Now
from app.web.drift_asked import asked_of, bed_asked, page_after
from app.web.editor_checkpoints import checkpoints_part
from app.web.editor_choose import card_of
from app.web.editor_findings import findings_part
from app.web.editor_notices import refused_notice, stale_notice, undo_notice
from app.web.editor_show import Laid, Shown, laid_out, layers_of, page_of, parts_of
from app.web.editor_view import (
    CardPart,
    CheckpointsPart,
    FindingsPart,
    LayersPart,
    Notice,
    NoticePart,
    address_of,
    cut_sheets_of,
    hidden_layers,
)
from app.web.forms import OWN_FIELDS, Form, then, whole_number
from app.web.hints import hints_of
from app.web.pages import show
from app.web.person import Person
from app.workflow.compute import compute
from app.workflow.loading import LoadedPanel, after_saving, checking, load_panel
from app.workflow.panel_edits import AskedEdit, edit_panel
from app.workflow.panel_log import Saved
from app.workflow.refusals import Stale, UndoRefused
from app.workflow.steps import Steps, steps_of
from app.workflow.undoing import redo, undo

router = APIRouter(prefix="/panels/{panel_id}", include_in_schema=False)


@router.get("")
def editor(panel_id: str, database: Database, person: Person) -> Response:
    """The page, all of it from one moment of the database."""
    with reading(database) as session:
        loaded = load_panel(session, panel_id)
        steps = steps_of(session, panel_id, person)
    return show("editor.html", page_of(loaded, steps))


@router.get("/card")
def card(
    panel_id: str, database: Database, thing: Annotated[list[str] | None, Query(max_length=200)] = None
) -> Response:
    """The card of one thing, of several openings, or of the panel where none is chosen."""
    with reading(database) as session:
        loaded = load_panel(session, panel_id)
    found = card_of(loaded, compute(loaded.project, loaded.wall, loaded.panel).layout, thing or ())
    return show("editor_card.html", CardPart(address_of(panel_id), loaded.revision, found))


@router.get("/checkpoints")
def checkpoints(panel_id: str, database: Database, temperature: str = "") -> Response:
    """The readings at one bed temperature; without one that can be, what was found and what was expected."""
    with reading(database) as session:
        loaded = load_panel(session, panel_id)
    bed = bed_asked(temperature, loaded.project)
    computed = compute(loaded.project, loaded.wall, loaded.panel)
    return show("editor_checkpoints.html", CheckpointsPart(checkpoints_part(computed.drift, loaded.project, bed)))


@router.get("/layers")
def layers(panel_id: str, database: Database, choice: Annotated[str, Query(max_length=40)]) -> Response:
    """The groups of a layer that the page shows from now on."""
    with reading(database) as session:
        loaded = load_panel(session, panel_id)
    return show("editor_layers.html", LayersPart(layers_of(loaded, hidden_layers([choice]))))


@router.get("/findings/now")
def findings_now(panel_id: str, database: Database) -> Response:
    """The findings to take the place of those on the page, after an edit."""
    with reading(database) as session:
        loaded = load_panel(session, panel_id)
    computed = compute(loaded.project, loaded.wall, loaded.panel)
    found = findings_part(computed.findings, loaded.panel.accepted)
    part = FindingsPart(address_of(panel_id), loaded.revision, found, cut_sheets_of(computed))
    return show("editor_findings_now.html", part)


@router.get("/findings")
def findings(panel_id: str, database: Database, code: Annotated[str, Query(max_length=40)]) -> Response:
    """The findings, those of one kind all of them."""
    with reading(database) as session:
        loaded = load_panel(session, panel_id)
    found = compute(loaded.project, loaded.wall, loaded.panel).findings
    part = FindingsPart(address_of(panel_id), loaded.revision, findings_part(found, loaded.panel.accepted, code))
    return show("editor_findings.html", part)


@router.post("/edits")
def edit(panel_id: str, request: Request, form: Form, database: Database, now: Now, person: Person) -> Response:
    """One edit from a form or a gesture; what cannot be laid out is not saved."""
    asked = AskedEdit(
        name=form.get("edit", ""),
        values={name: value for name, value in form.items() if name not in OWN_FIELDS},
        base_revision=whole_number(form, "base_revision"),
        command_id=form.get("command_id") or uuid4().hex,
        person=person,
        on_top=form.get("on_top") == "yes",
    )
    before: LoadedPanel | None = None
    try:
        with writing(database) as session:
            before = load_panel(session, panel_id)
            saved = edit_panel(session, before, asked, now)
            after = laid_out(after_saving(session, before, saved))
    except Refused as refused:
        return _told(request, refused_notice(refused, _asked_for(before, asked)), refused, 422)
    except Stale as stale:
        return _told(request, stale_notice(stale, panel_id, form), stale, 412)
    _tell(request, saved, panel_id)
    return _answer(request, form, before, after, saved)


@router.post("/undo")
def take_back(panel_id: str, request: Request, form: Form, database: Database, now: Now, person: Person) -> Response:
    """Undo this person's newest edit."""
    return _step(undo, panel_id, request, form, database, now, person)


@router.post("/redo")
def make_again(panel_id: str, request: Request, form: Form, database: Database, now: Now, person: Person) -> Response:
    """Make again what was undone last."""
    return _step(redo, panel_id, request, form, database, now, person)


def _step(
    step: Callable[..., Saved],
    panel_id: str,
    request: Request,
    form: Mapping[str, str],
    database: Database,
    now: datetime,
    person: str,
) -> Response:
    try:
        with writing(database) as session:
            before = load_panel(session, panel_id)
            saved = step(
                session,
                panel_id,
                person=person,
                command_id=form.get("command_id") or uuid4().hex,
                base_revision=whole_number(form, "base_revision"),
                now=now,
                check=checking(session, before.project_id),
            )
            after = laid_out(after_saving(session, before, saved))
    except UndoRefused as refused:
        return _told(request, undo_notice(refused), refused, 409)
    except Stale as stale:
        return _told(request, stale_notice(stale, panel_id, {}), stale, 412)
    _tell(request, saved, panel_id)
    return _answer(request, form, before, after, saved)


def _asked_for(before: LoadedPanel | None, asked: AskedEdit) -> Panel | None:
    """The panel that a refused edit would have made, whose items its faults count; None where that is not known."""
    if before is None or before.revision != asked.base_revision:
        return None
    project = before.project
    try:
        edit = edit_from(asked.name, asked.values, project.length_unit, sizes_of(project), bond_names(project))
        return edit.changed(before.panel)
    except Refused:
        return None


def _tell(request: Request, saved: Saved, panel_id: str) -> None:
    hints_of(request).tell(panel_id, saved.revision)


def _is_part(request: Request) -> bool:
    return request.headers.get("hx-request") == "true"


def _answer(request: Request, form: Mapping[str, str], before: LoadedPanel, after: Laid, saved: Saved) -> Response:
    """For a script the parts that changed, for a plain form the page again."""
    if not _is_part(request):
        return then(page_after(address_of(after.loaded.id), form))
    steps = Steps(saved.undo_label, saved.redo_label)
    known = laid_out(before) if form.get("base_revision") == str(before.revision) else None
    return show("editor_answer.html", parts_of(known, after, steps, _shown(form, after.loaded.project)))


def _shown(form: Mapping[str, str], project: Project) -> Shown:
    """What the page says it shows; the day's highest temperature where the slider says nothing sensible."""
    asked = asked_of(form.get("temperature"), None, project)
    return Shown(hidden_layers(form.get("hidden", "").split()), asked.bed)


def _told(request: Request, notice: Notice, error: Exception, status: int) -> Response:
    """For a script the notice, for a plain form the error's own page."""
    if not _is_part(request):
        raise error
    return show("editor_notice.html", NoticePart(notice), status)
