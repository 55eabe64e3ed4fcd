"""The Drift screen: how far the liner of one panel moves over the day, and what to do about it."""

from fastapi import APIRouter
from starlette.responses import HTMLResponse

from app.storage import reading
from app.web.database import Database
from app.web.drift_asked import Asked, asked_of
from app.web.drift_view import NowPart, RefusedPart, TapePart, now_of, page_of, tape_of
from app.web.pages import show
from app.web.person import Person
from app.workflow.compute import compute
from app.workflow.loading import LoadedPanel, load_panel
from app.workflow.opening import Connections
from app.workflow.steps import Steps, steps_of

router = APIRouter(prefix="/panels/{panel_id}/drift", include_in_schema=False)


@router.get("")
def drift(
    panel_id: str, database: Database, person: Person, temperature: str | None = None, tape: str = ""
) -> HTMLResponse:
    """The page; a temperature that cannot be is refused on it, at the day's highest."""
    loaded, steps = _loaded(panel_id, database, person)
    asked = asked_of(temperature, tape, loaded.project)
    computed = compute(loaded.project, loaded.wall, loaded.panel)
    bed = f"{asked.bed:g}" if temperature is None else temperature
    page = page_of(loaded, computed, asked, steps, (bed, tape))
    return show("drift.html", page, 422 if asked.faults else 200)


@router.get("/now")
def now(panel_id: str, database: Database, person: Person, temperature: str = "", tape: str = "") -> HTMLResponse:
    """What the slider repaints; a refusal goes to its own place and leaves the rest as it stands."""
    loaded, steps = _loaded(panel_id, database, person)
    asked = asked_of(temperature, tape, loaded.project)
    if asked.faults:
        return _refused(asked)
    computed = compute(loaded.project, loaded.wall, loaded.panel)
    headers = {"HX-Replace-Url": f"/panels/{panel_id}/drift?{asked.query}"}
    return show("drift_answer.html", NowPart(now_of(loaded, computed, asked, steps)), headers=headers)


@router.get("/tape")
def tape_table(
    panel_id: str, database: Database, person: Person, temperature: str = "", tape: str = ""
) -> HTMLResponse:
    """The tape table alone."""
    loaded, _ = _loaded(panel_id, database, person)
    asked = asked_of(temperature, tape, loaded.project)
    if asked.faults:
        return _refused(asked)
    return show("drift_tape.html", TapePart(tape_of(compute(loaded.project, loaded.wall, loaded.panel), asked)))


def _refused(asked: Asked) -> HTMLResponse:
    headers = {"HX-Retarget": "#drift-refused", "HX-Reswap": "innerHTML"}
    return show("drift_refused.html", RefusedPart(asked.faults), 422, headers)


def _loaded(panel_id: str, database: Connections, person: str) -> tuple[LoadedPanel, Steps]:
    with reading(database) as session:
        return load_panel(session, panel_id), steps_of(session, panel_id, person)
