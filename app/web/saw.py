"""The Saw list screen: what is cut for a panel, a wall, a casting day or the project, and its sheets as files."""

from typing import Annotated

from fastapi import APIRouter, Path, Query
from starlette.responses import HTMLResponse, Response

from app.drawing.svg import svg_document
from app.drawing.views.saw_station import saw_station
from app.storage import reading
from app.web.database import Database
from app.web.pages import show
from app.web.problems import failure
from app.web.saw_view import page_of
from app.web.scope import WHOLE, panels_in
from app.workflow.compute import Computed, compute, saved_of, saw_list_of
from app.workflow.loading import LoadedPanel, LoadedProject, load_project
from app.workflow.opening import Connections

router = APIRouter(prefix="/projects/{project_id}/saw", include_in_schema=False)

Of = Annotated[str, Query(max_length=80)]


@router.get("")
def saw(project_id: str, database: Database, of: Of = WHOLE) -> HTMLResponse:
    """The page of one scope."""
    loaded, title, panels, computed = _found(database, project_id, of)
    found, saved = saw_list_of(loaded.project, computed), saved_of(loaded.project, computed)
    return show("saw.html", page_of(loaded, of, title, panels, found, saved))


@router.get("/sheet-{number}.svg")
def sheet(project_id: str, database: Database, number: Annotated[int, Path(ge=1)], of: Of = WHOLE) -> Response:
    """One sheet for the saw station at true scale, for print."""
    loaded, title, _, computed = _found(database, project_id, of)
    found = saw_list_of(loaded.project, computed)
    named = f"Saw station: {loaded.project.name}, {title[0].lower()}{title[1:]}"
    sheets = saw_station(found, unit=loaded.project.length_unit, title=named)
    if number > len(sheets):
        raise failure("not-found", f"Sheet {number}: found {len(sheets)} sheets of this saw list.")
    content = svg_document(sheets[number - 1], "print")
    return Response(content, media_type="image/svg+xml", headers={"cache-control": "no-cache"})


def _found(
    database: Connections, project_id: str, of: str
) -> tuple[LoadedProject, str, tuple[LoadedPanel, ...], list[Computed]]:
    """The project, the scope's title and panels, and their results."""
    with reading(database) as session:
        loaded = load_project(session, project_id)
    title, panels = panels_in(loaded, of)
    computed = [compute(panel.project, panel.wall, panel.panel) for panel in panels]
    return loaded, title, panels, computed
