"""What a project's panels share, for scripts: read, and changed from a known revision."""

from typing import Annotated, Any

from fastapi import APIRouter, Header, Response

from app.documents.kinds import in_words
from app.panel.faults import Fault, Refused
from app.storage import reading, writing
from app.web.body import JsonBody, json_of
from app.web.conditions import IfMatch, base_revision, tag
from app.web.database import Database, Now
from app.web.merge_patch import merged
from app.workflow.project_settings import GROUPS, set_project, settings_of

router = APIRouter(prefix="/api/projects/{project_id}/settings", tags=["projects"])

_PATCH = json_of(
    f"A merge patch (RFC 7396) of the project file's {', '.join(GROUPS[:-1])} and {GROUPS[-1]}; null takes a value"
    " back to its default, a list is replaced whole.",
    "application/merge-patch+json",
)
_FAILURES: dict[int | str, dict[str, Any]] = {
    412: {"description": "The project was changed since the revision in If-Match; nothing was saved."},
    422: {"description": "Something cannot be used; every fault has its path, and nothing was saved."},
    428: {"description": "If-Match is missing."},
}


@router.get("", response_model=None)
def read(
    project_id: str, response: Response, database: Database, if_none_match: Annotated[str | None, Header()] = None
) -> Response | dict[str, Any]:
    """Liner, order, bed temperatures, blend and deliveries as typed, with the tag of the project's revision."""
    with reading(database) as session:
        revision, settings = settings_of(session, project_id)
    if if_none_match == tag(revision):
        return Response(status_code=304, headers={"etag": tag(revision)})
    response.headers["etag"] = tag(revision)
    return {"id": project_id, "revision": revision, "settings": settings}


@router.patch("", openapi_extra=_PATCH, responses=_FAILURES)
def change(
    project_id: str, body: JsonBody, response: Response, database: Database, now: Now, if_match: IfMatch = None
) -> dict[str, Any]:
    """Changes what the patch names, from the revision it is based on; every panel is laid out with it first."""
    base = base_revision(if_match)
    if not isinstance(body, dict):
        raise Refused([Fault("", in_words(body), "a merge patch as an object")])
    with writing(database) as session:
        _, held = settings_of(session, project_id)
        asked = {name: merged(held.get(name), patch) for name, patch in body.items()}
        revision = set_project(session, project_id, asked, base_revision=base, now=now).revision
        _, settings = settings_of(session, project_id)
    response.headers["etag"] = tag(revision)
    return {"id": project_id, "revision": revision, "settings": settings}
