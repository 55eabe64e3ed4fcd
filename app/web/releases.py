"""Releases: a panel, or many, frozen as a revision; what each changed; hold and go on."""

from collections.abc import Sequence
from datetime import datetime
from functools import partial
from typing import Annotated, cast

from fastapi import APIRouter, Path
from starlette.responses import HTMLResponse, Response

from app.panel.faults import Fault
from app.panel.release import letter_of
from app.storage import reading, releases, writing
from app.storage.errors import NotFound
from app.storage.releases import NoticeKind, StoredRelease
from app.web.database import Database, Now
from app.web.forms import Form, Lists, chosen, then
from app.web.page_links import project_path
from app.web.pages import Step, show
from app.web.person import Person
from app.web.problems import failure
from app.web.releases_view import (
    Outcome,
    ReleasesMaking,
    batch_words,
    panel_releases,
    project_releases,
    release_page,
    releases_address,
)
from app.workflow.jobs import Job, Jobs, Progress
from app.workflow.loading import LoadedProject, load_panel, load_project
from app.workflow.opening import Connections
from app.workflow.refusals import NotReleased
from app.workflow.release_differences import differences
from app.workflow.releasing import LONGEST_WHY, freeze, release, set_notice, verify

router = APIRouter(include_in_schema=False)

JOBS: Jobs[tuple[Outcome, ...]] = Jobs("set of releases", {})

MEDIA = {"json": "application/json", "svg": "image/svg+xml"}

JobId = Annotated[str, Path(max_length=40)]


@router.get("/projects/{project_id}/releases")
def of_project(project_id: str, database: Database) -> HTMLResponse:
    """Every panel, and how it stands against its last release."""
    return _project_page(project_id, database)


@router.post("/projects/{project_id}/releases")
def release_many(project_id: str, form: Lists, database: Database, now: Now, person: Person) -> Response:
    """Begins to release the chosen panels, one by one; each is whole or not released."""
    loaded = _loaded(project_id, database)
    why = "".join(form.get("why", ())).strip()
    wanted = frozenset(form.get("panel", ()))
    marks = {panel.id: panel.panel.mark for panel in loaded.panels if panel.id in wanted}
    faults = [] if marks else [Fault("panels", "none chosen", "one or more panels")]
    if not 1 <= len(why) <= LONGEST_WHY:
        faults.append(Fault("why", f"{len(why)} characters", f"a reason of 1 to {LONGEST_WHY} characters"))
    if faults:
        return _project_page(project_id, database, why, faults)
    make = partial(_release_each, database, tuple(marks.items()), why, person, now)
    job = JOBS.start(project_id, make)
    return then(f"/projects/{project_id}/releases/{job.id}")


@router.get("/projects/{project_id}/releases/{job_id}")
def making(project_id: str, job_id: JobId, database: Database) -> HTMLResponse:
    """How far a set of releases is."""
    return show("releases_making.html", _making(_loaded(project_id, database), _job(project_id, job_id)))


@router.get("/projects/{project_id}/releases/{job_id}/now")
def making_now(project_id: str, job_id: JobId, database: Database) -> HTMLResponse:
    """The part of that page that changes."""
    return show("releases_now.html", _making(_loaded(project_id, database), _job(project_id, job_id)))


@router.get("/panels/{panel_id}/releases")
def of_panel(panel_id: str, database: Database) -> HTMLResponse:
    """The releases of a panel, and a form for the next."""
    return _panel_page(panel_id, database)


@router.post("/panels/{panel_id}/releases")
def release_one(panel_id: str, form: Form, database: Database, now: Now, person: Person) -> Response:
    """Freezes the panel as its next revision."""
    why = form.get("why", "")
    try:
        row = release_now(database, panel_id, why, person, now)
    except NotReleased as error:
        return _panel_page(panel_id, database, why, error.faults)
    return then(f"{releases_address(panel_id)}/{row.id}")


@router.post("/panels/{panel_id}/releases/{release_id}/notice")
def notice(panel_id: str, release_id: str, form: Form, database: Database, now: Now, person: Person) -> Response:
    """A hold on a release, or its end; the release itself stays as it is."""
    kind = cast(NoticeKind, chosen(form, "kind", ("hold", "go on")))
    try:
        with writing(database) as session:
            _of(releases.find(session, release_id), panel_id)
            set_notice(session, release_id, kind, why=form.get("why", ""), person=person, now=now)
    except NotReleased as error:
        return _panel_page(panel_id, database, "", error.faults)
    return then(releases_address(panel_id))


@router.get("/panels/{panel_id}/releases/{release_id}")
def one(panel_id: str, release_id: str, database: Database) -> HTMLResponse:
    """One release: whether it is whole, what it changed, what it holds."""
    with reading(database) as session:
        loaded, row = load_panel(session, panel_id), _of(releases.find(session, release_id), panel_id)
        rows = releases.of_panel(session, panel_id)
        earlier = next((each for each in rows if each.head.number == row.head.number - 1), None)
        found, damaged = differences(session, row, earlier), verify(session, row)
    return show("release.html", release_page(loaded, row, earlier, found, damaged))


@router.get("/panels/{panel_id}/releases/{release_id}/{name}")
def part(panel_id: str, release_id: str, name: str, database: Database) -> Response:
    """One part, byte by byte as it was released."""
    with reading(database) as session:
        row = _of(releases.find(session, release_id), panel_id)
        if name not in row.head.parts:
            raise NotFound("part of this release", name)
        content = releases.part(session, release_id, name)
    headers = {"cache-control": "no-store", "etag": f'"{row.head.parts[name]}"'}
    return Response(content, media_type=MEDIA[name.rpartition(".")[2]], headers=headers)


def release_now(database: Connections, panel_id: str, why: str, person: str, now: datetime) -> StoredRelease:
    """Computes outside of the transaction that keeps it; raises NotReleased, NotFound."""
    with reading(database) as session:
        frozen = freeze(session, panel_id)
    with writing(database) as session:
        return release(session, frozen, why=why, person=person, now=now)


def _release_each(
    database: Connections,
    marks: Sequence[tuple[str, str]],
    why: str,
    person: str,
    now: datetime,
    told: Progress,
) -> tuple[Outcome, ...]:
    outcomes = []
    for done, (panel_id, mark) in enumerate(marks):
        told(done, len(marks))
        outcomes.append(_outcome(database, panel_id, mark, why, person, now))
    return tuple(outcomes)


def _outcome(database: Connections, panel_id: str, mark: str, why: str, person: str, now: datetime) -> Outcome:
    try:
        row = release_now(database, panel_id, why, person, now)
    except NotReleased as error:
        words = "; ".join(f"found {fault.found}, expected {fault.expected}" for fault in error.faults)
        return Outcome(mark, f"not released: {words}", releases_address(panel_id), False)
    except NotFound:
        return Outcome(mark, "not released: it was removed in the meantime", "", False)
    return Outcome(mark, f"rev {row.letter} released", f"{releases_address(panel_id)}/{row.id}", True)


def _making(loaded: LoadedProject, job: Job[tuple[Outcome, ...]]) -> ReleasesMaking:
    address = f"/projects/{loaded.id}/releases"
    return ReleasesMaking(
        title=f"Releases, {loaded.project.name}",
        path=project_path(loaded.id, loaded.project.name, Step("Releases", address), "Making"),
        address=address,
        now="" if job.is_over else f"{address}/{job.id}/now",
        done=job.done,
        steps=max(1, job.steps),
        words="Done." if job.made is not None else batch_words(job.done, job.steps),
        trouble=job.trouble,
        outcomes=job.made or (),
    )


def _project_page(project_id: str, database: Connections, why: str = "", faults: Sequence[Fault] = ()) -> HTMLResponse:
    with reading(database) as session:
        loaded, newest = load_project(session, project_id), releases.newest_of_project(session, project_id)
    return show("releases_project.html", project_releases(loaded, newest, why, faults), 422 if faults else 200)


def _panel_page(panel_id: str, database: Connections, why: str = "", faults: Sequence[Fault] = ()) -> HTMLResponse:
    with reading(database) as session:
        loaded, rows = load_panel(session, panel_id), releases.of_panel(session, panel_id)
    letter = letter_of(rows[0].head.number + 1 if rows else 1)
    return show("releases.html", panel_releases(loaded, rows, letter, why, faults), 422 if faults else 200)


def _of(row: StoredRelease, panel_id: str) -> StoredRelease:
    """A release of this panel and no other."""
    if row.panel_id != panel_id:
        raise NotFound("release", row.id)
    return row


def _loaded(project_id: str, database: Connections) -> LoadedProject:
    with reading(database) as session:
        return load_project(session, project_id)


def _job(project_id: str, job_id: str) -> Job[tuple[Outcome, ...]]:
    job = JOBS.find(project_id, job_id)
    if job is None:
        raise failure("not-found", "This set of releases is no longer kept; the list of releases shows what was done.")
    return job
