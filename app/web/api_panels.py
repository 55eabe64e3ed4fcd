"""Panels for scripts: read, change from a known revision, undo, redo, remove."""

from collections.abc import Callable
from datetime import datetime
from functools import partial
from typing import Annotated, Any

from fastapi import APIRouter, Header, Query, Response

from app.documents import results_face
from app.storage import Session, panels, projects, reading, writing
from app.web.body import JsonBody, json_of
from app.web.conditions import CommandId, IfMatch, base_revision, command_id, tag
from app.web.database import Database, Now
from app.web.hints import Hints, Told
from app.web.merge_patch import merged
from app.web.person import Person
from app.web.words import listed
from app.workflow.compute import compute
from app.workflow.editing import save, save_on_top
from app.workflow.loading import checking, load_panel, panel_value
from app.workflow.opening import Connections
from app.workflow.panel_log import Saved, since_base
from app.workflow.projects import remove_panel
from app.workflow.undoing import redo, undo

router = APIRouter(prefix="/api/panels/{panel_id}", tags=["panels"])

Step = Callable[..., Saved]
OnTop = Annotated[bool, Query(description="Where others changed other things since, put this change on top of theirs.")]


@router.get("", response_model=None)
def read(
    panel_id: str, response: Response, database: Database, if_none_match: Annotated[str | None, Header()] = None
) -> Response | dict[str, Any]:
    """The panel as last saved, with the tag of its revision."""
    with reading(database) as session:
        panel = panels.find(session, panel_id)
        wall = projects.find_wall(session, panel.wall_id)
    if if_none_match == tag(panel.revision):
        return Response(status_code=304, headers={"etag": tag(panel.revision)})
    response.headers["etag"] = tag(panel.revision)
    place = {"id": panel.id, "project": wall.project_id, "wall": wall.id}
    return place | {"revision": panel.revision, "document": panel.document}


@router.patch("", openapi_extra=json_of("A merge patch (RFC 7396) of the panel.", "application/merge-patch+json"))
def change(
    panel_id: str,
    body: JsonBody,
    response: Response,
    database: Database,
    now: Now,
    hints: Told,
    person: Person,
    if_match: IfMatch = None,
    idempotency_key: CommandId = None,
    on_top: OnTop = False,
) -> dict[str, Any]:
    """Changes what the patch names, from the revision it is based on."""
    base = base_revision(if_match)
    with writing(database) as session:
        check = checking(session, panels.project_of(session, panel_id))
        document = merged(since_base(session, panels.find(session, panel_id), base)[0], body)
        check(document)
        saved = (partial(save_on_top, check=check) if on_top else save)(
            session,
            panel_id,
            base_revision=base,
            command_id=command_id(idempotency_key),
            person=person,
            label=_label(body),
            document=document,
            now=now,
        )
        _lay(session, panel_id)
    hints.tell(panel_id, saved.revision)
    return _answer(saved, panel_id, response, database)


@router.post("/undo")
def take_back(
    panel_id: str,
    response: Response,
    database: Database,
    now: Now,
    hints: Told,
    person: Person,
    if_match: IfMatch = None,
    idempotency_key: CommandId = None,
) -> dict[str, Any]:
    """Takes back the newest edit that is not undone."""
    return _stepped(undo, panel_id, response, database, now, hints, person, if_match, idempotency_key)


@router.post("/redo")
def make_again(
    panel_id: str,
    response: Response,
    database: Database,
    now: Now,
    hints: Told,
    person: Person,
    if_match: IfMatch = None,
    idempotency_key: CommandId = None,
) -> dict[str, Any]:
    """Makes again what was undone last."""
    return _stepped(redo, panel_id, response, database, now, hints, person, if_match, idempotency_key)


@router.delete("", status_code=204)
def remove(panel_id: str, database: Database, now: Now, if_match: IfMatch = None) -> None:
    """Takes the panel out of its wall; its history is kept."""
    base = base_revision(if_match)
    with writing(database) as session:
        remove_panel(session, panel_id, base_revision=base, now=now)


def _stepped(
    step: Step,
    panel_id: str,
    response: Response,
    database: Connections,
    moment: datetime,
    hints: Hints,
    person: str,
    if_match: str | None,
    given_id: str | None,
) -> dict[str, Any]:
    base = base_revision(if_match)
    with writing(database) as session:
        saved = step(
            session,
            panel_id,
            person=person,
            command_id=command_id(given_id),
            base_revision=base,
            now=moment,
            check=checking(session, panels.project_of(session, panel_id)),
        )
        _lay(session, panel_id)
    hints.tell(panel_id, saved.revision)
    return _answer(saved, panel_id, response, database)


def _lay(session: Session, panel_id: str) -> None:
    """Lays the panel out before it is kept: what cannot be laid out must not be saved."""
    loaded = load_panel(session, panel_id)
    compute(loaded.project, loaded.wall, loaded.panel)


def _answer(saved: Saved, panel_id: str, response: Response, database: Connections) -> dict[str, Any]:
    """The panel after a change, and what it counts now."""
    response.headers["etag"] = tag(saved.revision)
    with reading(database) as session:
        panel = load_panel(session, panel_id)
    value = panel_value(panel.project, saved.document)
    counts = results_face.counts(compute(panel.project, panel.wall, value).layout)
    return {
        "id": panel_id,
        "revision": saved.revision,
        "document": saved.document,
        "counts": counts,
        "undo": saved.undo_label,
        "redo": saved.redo_label,
    }


def _label(patch: Any) -> str:
    """What a patch changes, for the history."""
    return f"Change {listed([name.replace('_', ' ') for name in patch])}" if isinstance(patch, dict) else "Change"
