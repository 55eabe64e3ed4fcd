"""One project: its page, and every change that its forms ask for."""

from dataclasses import dataclass, replace
from datetime import UTC, datetime
from typing import Any
from uuid import uuid4

from fastapi import APIRouter
from starlette.responses import HTMLResponse, RedirectResponse, Response

from app.lengths import Length, LengthError, Unit, format_length, parse
from app.panel.faults import Fault, Refused
from app.panel.things import Document
from app.storage import Session, panels, projects, reading, shares, writing
from app.storage.errors import MarkTaken, NotFound
from app.web.database import Database, Now
from app.web.forms import Form, named, then, whole_number
from app.web.pages import show
from app.web.person import Person
from app.web.project_laid import laid_of, schedule_of
from app.web.project_view import HOW_TO_TYPE, Asked, Typed, page_of
from app.web.wall_form import Changed, after, asked_of
from app.workflow.loading import (
    LoadedProject,
    LoadedWall,
    check_project,
    checking,
    load_panel,
    load_project,
    panel_of,
    wall_of,
)
from app.workflow.new_parts import new_panel, new_wall
from app.workflow.opening import Connections
from app.workflow.panel_edits import AskedEdit, edit_panel
from app.workflow.projects import add_panel, add_wall, project_file, put_back_panel, remove_panel, rename_panel
from app.workflow.refusals import ProjectStale, Stale
from app.workflow.wall_settings import set_wall

SINCE = (
    "Somebody changed this project since you opened the page, so the wall was left as it is. What you see now is the"
    " project as it stands; set the wall again if you still want to."
)

CAST_SINCE = (
    "Somebody set the casting day of this panel since you opened the page, so it was left as it is. What you see now is"
    " the project as it stands; set the day again if you still want to."
)

router = APIRouter(prefix="/projects/{project_id}", include_in_schema=False)


@dataclass(frozen=True, slots=True)
class ReadingPart:
    """What was understood of the lengths being typed."""

    words: str


@router.get("")
def project(
    project_id: str, database: Database, changed: str = "", revision: int = 0, datum: str = "", joint: str = ""
) -> HTMLResponse:
    """The page; after a change of a wall's settings its address says what they were, so that this can be undone."""
    return _page(database, project_id, Asked(changed=Changed(changed, revision, datum, joint) if changed else None))


@router.get("/reading")
def read_lengths(project_id: str, database: Database, width: str = "", height: str = "") -> HTMLResponse:
    """How the lengths in the form are understood, while they are typed."""
    with reading(database) as session:
        unit = projects.find(session, project_id).settings["length_unit"]
    said = [
        f"{name} {_understood(text, unit)}" for name, text in (("Width", width), ("height", height)) if text.strip()
    ]
    return show("reading.html", ReadingPart("; ".join(said) + "." if said else HOW_TO_TYPE[unit]))


@router.post("/walls")
def make_wall(project_id: str, database: Database, form: Form, now: Now) -> Response:
    """An empty wall behind the others."""
    try:
        with writing(database) as session:
            held = project_file(session, project_id)
            wall = new_wall(named(form, "mark", "a mark"), held["length_unit"])
            check_project(held | {"walls": [*held.get("walls", []), wall]})
            add_wall(session, project_id, wall, now)
    except Refused as error:
        return _page(database, project_id, Asked(error.faults))
    return then(f"/projects/{project_id}")


@router.get("/walls/{wall_id}")
def lay_out_wall(project_id: str, wall_id: str, database: Database) -> HTMLResponse:
    """The drawing of one wall, for a page that was shown before it was known."""
    return show("project_wall.html", laid_of(*_loaded(database, project_id, wall_id)))


@router.get("/walls/{wall_id}/schedule")
def count_wall(project_id: str, wall_id: str, database: Database) -> HTMLResponse:
    """The panel schedule of one wall with its counts, once its drawing is there."""
    return show("project_schedule_now.html", schedule_of(*_loaded(database, project_id, wall_id)))


@router.post("/walls/{wall_id}/settings")
def set_wall_settings(project_id: str, wall_id: str, database: Database, form: Form, now: Now) -> Response:
    """Datum and panel joint of a wall; refused when somebody changed the project since the page was shown."""
    try:
        base = whole_number(form, "revision")
        with writing(database) as session:
            asked = _wall_asked(session, project_id, wall_id, form)
            change = set_wall(session, project_id, wall_id, asked, base_revision=base, now=now)
    except Refused as error:
        return _page(database, project_id, Asked(error.faults))
    except ProjectStale:
        return _page(database, project_id, Asked(notice=SINCE), 412)
    return then(after(project_id, wall_id, change))


@router.post("/walls/{wall_id}/panels")
def make_panel(project_id: str, wall_id: str, database: Database, form: Form, now: Now) -> Response:
    """A rectangular panel from its mark and size; its editor opens."""
    try:
        with writing(database) as session:
            wall = wall_of(session, project_id, wall_id)
            document = _document(form, projects.find(session, project_id).settings["length_unit"])
            checking(session, project_id)(document)
            panel = add_panel(session, wall.id, document, now)
    except (Refused, MarkTaken) as error:
        typed = Typed(*(form.get(name, "") for name in ("mark", "width", "height", "size", "bond")))
        return _page(database, project_id, Asked(_faults(error), {wall_id: typed}))
    return then(f"/panels/{panel.id}")


@router.post("/panels/{panel_id}/mark")
def rename(project_id: str, panel_id: str, database: Database, form: Form, now: Now, person: Person) -> Response:
    """Another mark for a panel, in its log like any edit."""
    try:
        mark, base = named(form, "mark", "a mark"), whole_number(form, "revision")
        with writing(database) as session:
            held = panel_of(session, project_id, panel_id)
            checking(session, project_id)(held.document | {"mark": mark})
            command = {"command_id": uuid4().hex, "person": person}
            rename_panel(session, panel_id, mark, base_revision=base, now=now, **command)
    except (Refused, MarkTaken) as error:
        return _page(database, project_id, Asked(_faults(error)))
    return then(f"/projects/{project_id}")


@router.post("/panels/{panel_id}/casting")
def set_casting(project_id: str, panel_id: str, database: Database, form: Form, now: Now, person: Person) -> Response:
    """A panel's casting day and whether its brick is placed, in its log like any edit; what others changed stays."""
    try:
        values = {name: form.get(name, "") for name in ("cast_on", "placed")}
        asked = AskedEdit("set_casting", values, whole_number(form, "revision"), uuid4().hex, person, on_top=True)
        with writing(database) as session:
            wall = panel_of(session, project_id, panel_id).wall_id
            edit_panel(session, load_panel(session, panel_id), asked, now)
    except Refused as error:
        return _page(database, project_id, Asked(error.faults))
    except Stale:
        return _page(database, project_id, Asked(notice=CAST_SINCE), 412)
    return then(f"/projects/{project_id}#casting-{wall}")


@router.post("/panels/{panel_id}/remove")
def remove(project_id: str, panel_id: str, database: Database, form: Form, now: Now) -> RedirectResponse:
    """Takes a panel out of its wall; its history is kept."""
    with writing(database) as session:
        panel_of(session, project_id, panel_id)
        remove_panel(session, panel_id, base_revision=whole_number(form, "revision"), now=now)
    return then(f"/projects/{project_id}")


@router.post("/panels/{panel_id}/put-back")
def put_back(project_id: str, panel_id: str, database: Database, now: Now) -> Response:
    """A removed panel, in its old place and with its history."""
    with writing(database) as session:
        if panel_id not in {panel.id for panel in panels.removed_of_project(session, project_id)}:
            raise NotFound("panel", panel_id)
        put_back_panel(session, panel_id, now)
    return then(f"/projects/{project_id}")


def _page(database: Connections, project_id: str, asked: Asked, status: int = 200) -> HTMLResponse:
    with reading(database) as session:
        loaded = load_project(session, project_id)
        walls = projects.list_walls(session, project_id)
        links = shares.list_of_project(session, project_id)
        removed = panels.removed_of_project(session, project_id)
    page = replace(
        page_of(loaded, walls, links, asked, datetime.now(UTC)),
        removed=tuple((panel.id, panel.mark) for panel in removed),
    )
    return show("project.html", page, 422 if asked.faults else status)


def _loaded(database: Connections, project_id: str, wall_id: str) -> tuple[LoadedProject, LoadedWall]:
    with reading(database) as session:
        loaded = load_project(session, project_id)
    found = next((wall for wall in loaded.walls if wall.id == wall_id), None)
    if found is None:
        raise NotFound("wall", wall_id)
    return loaded, found


def _wall_asked(session: Session, project_id: str, wall_id: str, form: Form) -> dict[str, Any]:
    loaded = load_project(session, project_id)
    wall = next((wall.wall for wall in loaded.walls if wall.id == wall_id), None)
    if wall is None:
        raise NotFound("wall", wall_id)
    return asked_of(form, wall, loaded.project.length_unit)


def _document(form: Form, unit: Unit) -> Document:
    """The panel that a form describes; raises Refused with every fault of the form."""
    lengths, faults = {}, []
    for name in ("width", "height"):
        try:
            lengths[name] = _positive(parse(form.get(name, ""), unit))
        except LengthError as error:
            faults.append(Fault(name, form.get(name) or "nothing", f"{error.expected}, for example {error.example}"))
    if faults:
        raise Refused(faults)
    parts = (form.get("size", ""), form.get("bond", ""))
    return new_panel(named(form, "mark", "a mark"), lengths["width"], lengths["height"], unit, *parts)


def _positive(length: Length) -> Length:
    if length.nm <= 0:
        raise LengthError(str(length.typed), 0, str(length.typed), "a length of more than 0", "12'-6\"")
    return length


def _understood(text: str, unit: Unit) -> str:
    try:
        length = _positive(parse(text.strip(), unit))
    except LengthError as error:
        return f"cannot be read: {error}"
    return f"{format_length(length, 'in', 64)} ({format_length(length, 'mm')})"


def _faults(error: Refused | MarkTaken) -> tuple[Fault, ...]:
    if isinstance(error, Refused):
        return error.faults
    return (Fault("mark", error.mark, "a mark that no other panel of this project has"),)
