"""Releases for scripts: list, make, verify, take a part."""

from typing import Any

from fastapi import APIRouter

from app.storage import panels, reading, releases
from app.storage.releases import StoredRelease
from app.web.body import JsonBody, json_of
from app.web.database import Database, Now
from app.web.person import Person
from app.web.problems import failure
from app.web.releases import release_now
from app.workflow.releasing import verify

router = APIRouter(prefix="/api/panels/{panel_id}/releases", tags=["releases"])


@router.get("")
def listed(panel_id: str, database: Database) -> dict[str, Any]:
    """Every release of the panel, the newest first; `faults` says what is no longer as it was released."""
    with reading(database) as session:
        panels.find(session, panel_id)
        rows = [(row, verify(session, row)) for row in releases.of_panel(session, panel_id)]
    return {"releases": [_document(row) | {"faults": list(faults)} for row, faults in rows]}


@router.post("", status_code=201, openapi_extra=json_of('`{"why": "…"}`: why the panel is released.'))
def make(panel_id: str, body: JsonBody, database: Database, now: Now, person: Person) -> dict[str, Any]:
    """Freezes the panel as its next revision; 422 with every error that stands in the way."""
    if not isinstance(body, dict) or not isinstance(body.get("why"), str) or set(body) != {"why"}:
        raise failure("malformed", 'Found another body, expected {"why": "a reason"}.')
    return _document(release_now(database, panel_id, body["why"].strip(), person, now))


def _document(row: StoredRelease) -> dict[str, Any]:
    head = row.head
    return {
        "id": row.id,
        "panel": row.panel_id,
        "mark": head.mark,
        "rev": row.letter,
        "number": head.number,
        "revision": head.revision,
        "by": head.person,
        "why": head.why,
        "at": head.at,
        "engine": head.engine,
        "inputs_digest": head.inputs_digest,
        "previous": head.previous,
        "parts": dict(head.parts),
        "digest": row.digest,
        "state": "superseded" if not row.is_newest else "hold" if row.hold else "in force",
    }
