"""Several people at one panel: the hint that it has changed, and what changed since the revision that a page shows."""

from dataclasses import dataclass, replace
from functools import partial
from typing import Annotated

from fastapi import APIRouter, Query
from starlette.concurrency import run_in_threadpool
from starlette.responses import JSONResponse, Response, StreamingResponse

from app.storage import commands, panels, reading
from app.web.database import Database
from app.web.editor_show import Shown, laid_out, parts_of
from app.web.editor_view import EditorParts, hidden_layers
from app.web.hints import Told
from app.web.pages import show
from app.web.person import Person
from app.workflow.loading import load_panel, with_document
from app.workflow.opening import Connections
from app.workflow.panel_log import document_at
from app.workflow.steps import steps_of

router = APIRouter(prefix="/panels/{panel_id}", include_in_schema=False)

TOLD = 3
"""At most so many changes are named one by one."""


@dataclass(frozen=True, slots=True)
class SincePart:
    """What an edit's answer holds, and in words what others saved."""

    parts: EditorParts
    told: tuple[str, ...]


@router.get("/events")
async def events(panel_id: str, database: Database, hints: Told) -> Response:
    """Says `rev N` whenever somebody saved; raises NotFound."""
    now = partial(run_in_threadpool, _revision, database, panel_id)
    await now()
    stream = hints.stream(panel_id, now)
    return StreamingResponse(stream, headers={"cache-control": "no-store"}, media_type="text/event-stream")


@router.get("/events/now")
def revision_now(panel_id: str, database: Database) -> JSONResponse:
    """The revision that is there, for a page without a stream of its own; raises NotFound."""
    return JSONResponse(_revision(database, panel_id), headers={"cache-control": "no-store"})


def _revision(database: Connections, panel_id: str) -> int:
    with reading(database) as session:
        return panels.find(session, panel_id).revision


@router.get("/since")
def since(
    panel_id: str,
    database: Database,
    person: Person,
    revision: Annotated[int, Query(ge=1)],
    hidden: str = "",
    temperature: float | None = None,
) -> Response:
    """The parts of a page that shows an earlier revision that are others by now; nothing where none is newer."""
    with reading(database) as session:
        now = load_panel(session, panel_id)
        if now.revision <= revision:
            return Response(status_code=204)
        stored = panels.find(session, panel_id)
        before = with_document(now, document_at(session, stored, revision))
        told = tuple(_told(line) for line in reversed(commands.since(session, panel_id, revision)))
        steps = steps_of(session, panel_id, person)
    shown = Shown(hidden_layers(hidden.split()), temperature)
    parts = parts_of(laid_out(replace(before, revision=revision)), laid_out(now), steps, shown)
    more = (f"and {len(told) - TOLD} changes before",) if len(told) > TOLD else ()
    return show("editor_since.html", SincePart(parts, (*told[-TOLD:], *more)))


def _told(line: commands.StoredCommand) -> str:
    step = "" if line.kind == "edit" else f"{line.kind} of "
    return f"{line.person}: {step}{line.label}, rev {line.revision}"
