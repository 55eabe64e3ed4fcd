"""Back in the office: how far every panel is, what holds up the next casting, and all that the bed recorded."""

from fastapi import APIRouter
from starlette.responses import HTMLResponse

from app.storage import reading
from app.web.at_bed_view import bed_records_page, progress_page
from app.web.database import Database
from app.web.pages import show
from app.workflow.bed_records import bed_work, judged
from app.workflow.compute import compute
from app.workflow.loading import load_panel, load_project
from app.workflow.opening import Connections

router = APIRouter(include_in_schema=False)


@router.get("/projects/{project_id}/at-bed")
def progress(project_id: str, database: Database) -> HTMLResponse:
    """Every panel in the order in which it is cast."""
    return show("at_bed.html", _progress(project_id, database))


@router.get("/projects/{project_id}/at-bed/now")
def progress_now(project_id: str, database: Database) -> HTMLResponse:
    """The part of that page that follows the bed."""
    return show("at_bed_now.html", _progress(project_id, database))


@router.get("/panels/{panel_id}/at-bed")
def panel_records(panel_id: str, database: Database) -> HTMLResponse:
    """All that was recorded on one panel: readings with plots, what differs, findings with photos, who and when."""
    with reading(database) as session:
        loaded = load_panel(session, panel_id)
        work = bed_work(session, panel_id)
        readings = judged(session, work) if work else ()
    computed = compute(loaded.project, loaded.wall, loaded.panel)
    return show("bed_records.html", bed_records_page(loaded, work, readings, computed))


def _progress(project_id: str, database: Connections) -> object:
    with reading(database) as session:
        loaded = load_project(session, project_id)
        works = {panel.id: bed_work(session, panel.id) for panel in loaded.panels}
    return progress_page(loaded, works)
