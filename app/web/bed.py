"""The bed page: one panel as seen standing at its foot, for a tablet."""

import json
from dataclasses import dataclass
from datetime import datetime
from typing import Annotated, Literal

from fastapi import APIRouter, Query
from starlette.requests import Request
from starlette.responses import HTMLResponse, JSONResponse, Response

from app.storage import panels, projects, reading, records, releases
from app.storage.errors import NotFound
from app.web.bed_release import now_of, release_page
from app.web.bed_view import Readings, page_of, readings_of
from app.web.database import Database, Now
from app.web.drift_asked import asked_of
from app.web.forms import then
from app.web.guests import NOTHING_THERE, BedViewer, Viewer, clear_guest
from app.web.pages import Page, show
from app.web.problems import Failure, failure
from app.workflow.bed_records import BedWork, bed_work
from app.workflow.compute import compute
from app.workflow.loading import LoadedPanel, load_panel
from app.workflow.opening import Connections
from app.workflow.releasing import BED, verify

router = APIRouter(prefix="/bed", include_in_schema=False)

Shown = Literal["set-out", "sheets", "brick", "checkpoints"]


@dataclass(frozen=True, slots=True)
class BedLink:
    """A panel on the list: `state` says its revision and how far it is."""

    mark: str
    wall: str
    address: str
    state: str


@dataclass(frozen=True, slots=True)
class BedDay:
    """The panels of one casting day, or those that have none yet."""

    words: str
    panels: tuple[BedLink, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class BedListPage(Page):
    """The panels that a link to a project opens, in the order in which they are cast."""

    name: str
    days: tuple[BedDay, ...]


@dataclass(frozen=True, slots=True)
class ReadingsPart:
    """The readings alone, as the slider moves."""

    readings: Readings


@router.get("")
def bed_list(database: Database, viewer: BedViewer, now: Now) -> Response:
    """Every panel that the link opens; the office starts from the list of projects."""
    if viewer.project_id is None:
        return then("/")
    if viewer.panel_id is not None:
        return then(f"/bed/{viewer.panel_id}")
    with reading(database) as session:
        whole = projects.read_whole(session, viewer.project_id)
        links: dict[str, list[BedLink]] = {}
        for wall in whole.walls:
            for panel in whole.panels[wall.id]:
                state = _state(bed_work(session, panel.id))
                day = str(panel.document.get("cast_on") or "")
                links.setdefault(day, []).append(BedLink(panel.mark, wall.mark, f"/bed/{panel.id}", state))
    by_day = sorted(links.items(), key=lambda each: (not each[0], each[0]))
    days = tuple(BedDay(_day_words(day, now), tuple(panels)) for day, panels in by_day)
    return show("bed_list.html", BedListPage(title="At the bed", name=whole.project.name, days=days))


def _day_words(day: str, now: datetime) -> str:
    if not day:
        return "No casting day yet"
    today = now.astimezone().date().isoformat()
    return f"Cast today, {day}" if day == today else f"Cast on {day}"


def _state(work: BedWork | None) -> str:
    if work is None:
        return "not released yet"
    concrete = work.progress.concrete
    if work.newest.hold:
        return f"rev {work.newest.letter}, ON HOLD"
    if concrete:
        return f"rev {work.newest.letter}, concrete {concrete.body['state']}"
    return f"rev {work.newest.letter}, {work.laid} of {work.sheets} sheets laid"


@router.post("/leave")
def leave(request: Request) -> Response:
    """Forgets the link on this device."""
    return clear_guest(then("/bed"), request)


@router.get("/{panel_id}")
def bed(
    panel_id: str,
    database: Database,
    viewer: BedViewer,
    shown: Annotated[Shown, Query(alias="show")] = "set-out",
    temperature: str | None = None,
    rev: str = "",
) -> HTMLResponse:
    """A release of the panel, the newest where none is asked for; the drawing as it stands where there is none.

    A bed temperature that cannot be is refused where the readings stand.
    """
    loaded = _seen(panel_id, database, viewer)
    released = _released(panel_id, rev, database, viewer)
    if released is not None:
        return released
    has_list = viewer.is_guest and viewer.panel_id is None
    asked = asked_of(temperature, None, loaded.project)
    computed = compute(loaded.project, loaded.wall, loaded.panel)
    page = page_of(loaded, computed, shown, asked, is_guest=viewer.is_guest, has_list=has_list)
    return show("bed.html", page, 422 if asked.faults else 200)


@router.get("/{panel_id}/now")
def now_there(panel_id: str, database: Database, viewer: BedViewer, after: int = 0) -> Response:
    """The newest release, and records that came since: what a page that is open asks for now and then."""
    _seen(panel_id, database, viewer)
    with reading(database) as session:
        rows = releases.of_panel(session, panel_id)
        if not rows:
            raise Failure(NOTHING_THERE)
        stored = records.of_panel(session, panel_id, after)
    return JSONResponse(now_of(rows, stored), headers={"cache-control": "no-store"})


@router.get("/{panel_id}/readings")
def readings(panel_id: str, database: Database, viewer: BedViewer, temperature: str | None = None) -> HTMLResponse:
    """The list of checkpoints at one bed temperature."""
    loaded = _seen(panel_id, database, viewer)
    asked = asked_of(temperature, None, loaded.project)
    computed = compute(loaded.project, loaded.wall, loaded.panel)
    part = ReadingsPart(readings_of(loaded, computed, asked))
    return show("bed_readings.html", part, 422 if asked.faults else 200)


def _released(panel_id: str, rev: str, database: Connections, viewer: Viewer) -> HTMLResponse | None:
    """The page of a release; None where the panel has none, Failure for one that is not there or no longer whole."""
    with reading(database) as session:
        rows = releases.of_panel(session, panel_id)
        row = next((row for row in rows if rev in ("", row.letter)), None)
        if row is None:
            if rev:
                raise Failure(NOTHING_THERE)
            return None
        damaged = verify(session, row)
        if damaged:
            raise failure(
                "conflict", f"Rev {row.letter} is no longer as it was released: {damaged[0]}. Call the office."
            )
        given = json.loads(releases.part(session, row.id, BED))
    is_list = not viewer.is_guest or viewer.panel_id is None
    page = release_page(
        row, given, may_record=viewer.may_record, is_guest=viewer.is_guest, all_panels="/bed" if is_list else ""
    )
    return show("bed_release.html", page)


def _seen(panel_id: str, database: Connections, viewer: Viewer) -> LoadedPanel:
    """The panel; one that is not there and one that the link does not open get the same answer."""
    try:
        with reading(database) as session:
            if viewer.may_see(panels.project_of(session, panel_id), panel_id):
                return load_panel(session, panel_id)
    except NotFound as error:
        raise Failure(NOTHING_THERE) from error
    raise Failure(NOTHING_THERE)
