"""The Submittal screen: contents chosen, progress while the PDF is made, the PDF itself."""

from typing import Annotated

from fastapi import APIRouter, Path
from starlette.responses import HTMLResponse, RedirectResponse, Response

from app.documents.submittal_parts import PARTS
from app.drawing.scales import SHEETS, NoScaleFits
from app.panel.faults import Fault, Refused
from app.storage import reading
from app.web.database import Database, Now
from app.web.forms import Form, chosen, then
from app.web.pages import show
from app.web.problems import failure
from app.web.submittal_view import choice_of, making_of
from app.workflow.issuing import submittal_of
from app.workflow.jobs import Job, Jobs
from app.workflow.loading import LoadedProject, load_project
from app.workflow.opening import Connections

router = APIRouter(prefix="/projects/{project_id}/submittal", include_in_schema=False)

JOBS: Jobs[bytes] = Jobs("submittal", {NoScaleFits: lambda unfit: f"{str(unfit)[:1].upper()}{str(unfit)[1:]}."})

JobId = Annotated[str, Path(max_length=40)]


@router.get("")
def choose(project_id: str, database: Database) -> HTMLResponse:
    """The page with everything that a submittal can hold."""
    return show("submittal.html", choice_of(_loaded(project_id, database)))


@router.post("")
def make(project_id: str, form: Form, database: Database, now: Now) -> RedirectResponse:
    """Begins to make one; raises Refused for a form without any part."""
    loaded, day = _loaded(project_id, database), now.astimezone().date()
    sheet = chosen(form, "sheet", SHEETS)
    parts = frozenset(name for name in PARTS if form.get(name))
    if not parts:
        raise Refused([Fault("parts", "nothing", f"one or more of {', '.join(PARTS.values())}")])
    job = JOBS.start(project_id, lambda told: submittal_of(loaded, day, sheet, parts, told))
    return then(f"/projects/{project_id}/submittal/{job.id}")


@router.get("/{job_id}")
def making(project_id: str, job_id: JobId, database: Database) -> HTMLResponse:
    """How far it is."""
    return show("submittal_making.html", making_of(_loaded(project_id, database), _job(project_id, job_id)))


@router.get("/{job_id}/now")
def making_now(project_id: str, job_id: JobId, database: Database) -> HTMLResponse:
    """The part of that page that changes."""
    return show("submittal_now.html", making_of(_loaded(project_id, database), _job(project_id, job_id)))


@router.get("/{job_id}/file.pdf")
def ready(project_id: str, job_id: JobId) -> Response:
    """The PDF; there is nothing at this address until it is ready."""
    job = _job(project_id, job_id)
    if job.made is None:
        raise failure("not-found", f"This submittal is not ready: {job.done} of {job.steps} steps are done.")
    headers = {"content-disposition": "attachment", "cache-control": "no-store"}
    return Response(job.made, media_type="application/pdf", headers=headers)


def _loaded(project_id: str, database: Connections) -> LoadedProject:
    with reading(database) as session:
        return load_project(session, project_id)


def _job(project_id: str, job_id: str) -> Job[bytes]:
    job = JOBS.find(project_id, job_id)
    if job is None:
        raise failure("not-found", "This submittal is no longer kept: make it again.")
    return job
