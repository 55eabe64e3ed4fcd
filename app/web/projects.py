"""The list of projects: open one, begin one, bring one in as a file."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from logging import getLogger
from typing import Any

from fastapi import APIRouter
from starlette.responses import HTMLResponse, RedirectResponse, Response

from app.documents.json_text import read_text
from app.panel.faults import Fault, Refused
from app.panel.form import Form as Sizes
from app.storage import Session, projects, reading, writing
from app.storage.projects import ProjectLine
from app.web.database import Database, Now
from app.web.forms import Form, Upload, chosen, named, then
from app.web.pages import Page, Step, show
from app.web.problems import failure
from app.web.wall_drawing import WallDrawing, thumbnail
from app.web.words import at, counted
from app.workflow.compute import compute
from app.workflow.demonstration import demonstration_files, open_demonstration
from app.workflow.loading import LoadedProject, check_project, load_project
from app.workflow.new_parts import new_panel, new_project, usual
from app.workflow.opening import Connections
from app.workflow.projects import create_project

LOG = getLogger(__name__)

router = APIRouter(include_in_schema=False)

_drawn: dict[str, tuple[tuple[int, datetime], tuple[WallDrawing, ...]]] = {}

UNITS = {"in": "Feet and inches", "mm": "Millimetres"}


@dataclass(frozen=True, slots=True)
class ProjectRow:
    """One project of the list, with a small picture of each wall that has panels."""

    name: str
    address: str
    facts: str
    changed: str
    pictures: tuple[WallDrawing, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ProjectsPage(Page):
    """All projects; `faults` and `typed` belong to a form that was sent and refused."""

    projects: tuple[ProjectRow, ...]
    units: Mapping[str, str]
    has_demo: bool
    typed: Mapping[str, str]
    faults: tuple[Fault, ...] = ()
    refused: str = ""


@router.get("/")
def all_projects(database: Database) -> HTMLResponse:
    return show("projects.html", _page(database))


@router.post("/projects")
def begin(database: Database, form: Form, now: Now) -> Response:
    """A project with one wall, and in it the first panel where its size is given: then its editor opens."""
    try:
        file = check_project(_begun(form))
        with writing(database) as session:
            ids = create_project(session, file, now)
    except Refused as error:
        return show("projects.html", _page(database, form, error.faults, "new"), 422)
    first = ids.walls[0].panels
    return then(f"/panels/{first[0]}" if first else f"/projects/{ids.project}")


def _begun(form: Mapping[str, str]) -> dict[str, Any]:
    unit = chosen(form, "unit", tuple(UNITS))
    file = new_project(named(form, "name", "a name"), unit)
    typed = Sizes(dict(form), unit)
    if typed.has("width") or typed.has("height"):
        width, height = typed.length("width"), typed.length("height")
        typed.finish()
        file["walls"][0]["panels"] = [new_panel("P1", width, height, unit, usual(unit).size, "running")]
    return file


@router.post("/projects/file")
def bring_in(database: Database, file: Upload, now: Now) -> Response:
    """A project from its file; with anything wrong in it nothing is stored."""
    try:
        document = check_project(read_text(file))
        with writing(database) as session:
            ids = create_project(session, document, now)
    except Refused as error:
        return show("projects.html", _page(database, {}, error.faults, "file"), 422)
    return then(f"/projects/{ids.project}")


@router.post("/projects/demo")
def demo(database: Database, now: Now) -> RedirectResponse:
    """The demonstration project, brought in once and opened again after that."""
    with writing(database) as session:
        project_id = open_demonstration(session, now)
    if project_id is None:
        raise failure("not-found", "The demonstration's files were left out of this installation.")
    return then(f"/projects/{project_id}")


def _page(
    database: Connections, typed: Mapping[str, str] | None = None, faults: tuple[Fault, ...] = (), refused: str = ""
) -> ProjectsPage:
    with reading(database) as session:
        rows = tuple(_row(line, _pictures(session, line)) for line in projects.list_all(session))
    return ProjectsPage(
        title="Projects",
        path=(Step("Projects"),),
        projects=rows,
        units=UNITS,
        has_demo=bool(demonstration_files()),
        typed={"name": "", "unit": "in", "width": "", "height": "", **(typed or {})},
        faults=faults,
        refused=refused,
    )


def _row(line: ProjectLine, pictures: tuple[WallDrawing, ...]) -> ProjectRow:
    return ProjectRow(line.name, f"/projects/{line.id}", counted(line.panels, "panel"), at(line.updated_at), pictures)


def _pictures(session: Session, line: ProjectLine) -> tuple[WallDrawing, ...]:
    """A small picture of each wall, drawn anew only when something in the project has changed."""
    state = (line.revision, line.updated_at)
    kept = _drawn.get(line.id)
    if kept is None or kept[0] != state:
        kept = _drawn[line.id] = (state, _drawn_or_not(session, line))
    return kept[1]


def _drawn_or_not(session: Session, line: ProjectLine) -> tuple[WallDrawing, ...]:
    """No pictures for a project that cannot be drawn: the list of all others stays within reach."""
    try:
        return _draw(load_project(session, line.id))
    except Exception:
        LOG.exception("project %s cannot be drawn", line.id)
        return ()


def _draw(loaded: LoadedProject) -> tuple[WallDrawing, ...]:
    computed = {panel.id: compute(loaded.project, panel.wall, panel.panel) for panel in loaded.panels}
    unit = loaded.project.length_unit
    return tuple(thumbnail(wall, computed, unit) for wall in loaded.walls if wall.panels)
