"""Records from the bed: a batch in, an answer a record; what is missing here; photos."""

from dataclasses import asdict
from typing import Annotated, Any

from fastapi import APIRouter, Depends, Request
from starlette.responses import Response

from app.panel.release import part_digest
from app.storage import reading, records, releases, writing
from app.storage.errors import NotFound
from app.web.body import JsonBody, json_of
from app.web.database import Database, Now
from app.web.field_limits import FieldLimits
from app.web.guests import BedViewer, Viewer
from app.web.problems import Failure, failure, problem
from app.workflow.field import MOST_IN_BATCH, take

router = APIRouter(prefix="/api/field", tags=["field"])

MOST_ASKED = 500
LARGEST_PHOTO = 600_000
JPEG = b"\xff\xd8\xff"


@router.post("/records", openapi_extra=json_of('`{"records": […]}`: at most 50, in the order of the device.'))
def take_in(body: JsonBody, request: Request, database: Database, viewer: BedViewer, now: Now) -> dict[str, Any]:
    """Stores each record once; the answer to each says its id, its digest and whether it is stored."""
    batch = _batch(body)
    _refuse_closed(viewer)
    _refuse_many(request, viewer, len(batch))
    came_by = f"link {viewer.share_id}" if viewer.share_id else "office"
    with writing(database) as session:
        answers = [take(session, value, viewer.may_see, came_by, now) for value in batch]
    return {"records": [asdict(answer) for answer in answers]}


@router.post("/known", openapi_extra=json_of('`{"device": "…", "ids": […]}`: at most 500.'))
def known(body: JsonBody, database: Database, viewer: BedViewer) -> dict[str, Any]:
    """Which of a device's records are not here: a server put back from an older copy asks for them again."""
    ids = body.get("ids") if isinstance(body, dict) else None
    if not isinstance(ids, list) or len(ids) > MOST_ASKED or not all(isinstance(one, str) for one in ids):
        raise failure("malformed", f'Found another body, expected {{"device": …, "ids": […]}} of at most {MOST_ASKED}.')
    _refuse_closed(viewer)
    with reading(database) as session:
        return {"missing": list(records.missing(session, ids))}


async def raw_body(request: Request) -> bytes:
    return await request.body()


@router.put("/records/{record_id}/photo")
def take_photo(
    record_id: str, content: Annotated[bytes, Depends(raw_body)], database: Database, viewer: BedViewer, now: Now
) -> dict[str, Any]:
    """The photo of a record that is stored, as JPEG; the same again gets the same answer again."""
    _refuse_closed(viewer)
    if not content.startswith(JPEG) or len(content) > LARGEST_PHOTO:
        found = f"{len(content):,} bytes{'' if content.startswith(JPEG) else ' that are no JPEG'}"
        raise failure("refused", f"Found {found}, expected a JPEG of at most {LARGEST_PHOTO:,} bytes.")
    digest = part_digest(content)
    with writing(database) as session:
        _seen(session, record_id, viewer)
        held = records.add_photo(session, record_id, digest, content, now)
    if held != digest:
        raise failure("reused", "This record has another photo, which was here first.")
    return {"id": record_id, "digest": digest, "state": "stored"}


@router.get("/records/{record_id}/photo", response_class=Response)
def photo(record_id: str, database: Database, viewer: BedViewer) -> Response:
    """The photo of a record."""
    with reading(database) as session:
        _seen(session, record_id, viewer)
        content = records.photo(session, record_id)
    return Response(content, media_type="image/jpeg", headers={"cache-control": "private, max-age=3600"})


def _batch(body: Any) -> list[Any]:
    batch = body.get("records") if isinstance(body, dict) else None
    if not isinstance(batch, list) or len(batch) > MOST_IN_BATCH:
        found = f"{len(batch)} records" if isinstance(batch, list) else "another body"
        raise failure("malformed", f'Found {found}, expected {{"records": […]}} of at most {MOST_IN_BATCH}.')
    return batch


def _refuse_closed(viewer: Viewer) -> None:
    if not viewer.may_record:
        raise failure("forbidden", "This link is for looking only; records stay on the device.")


def _refuse_many(request: Request, viewer: Viewer, count: int) -> None:
    limits: FieldLimits = request.app.state.field_limits
    seconds = limits.wait(viewer.share_id or "office", count)
    if seconds:
        found = problem("too-many", "Too many records at once; the device sends them again by itself.")
        raise Failure(type(found)(found.kind, found.detail, headers={"retry-after": str(seconds)}))


def _seen(session: Any, record_id: str, viewer: Viewer) -> None:
    """A record on a panel that the sender may see; raises NotFound for any other."""
    stored = records.find(session, record_id)
    if stored is None:
        raise NotFound("record", record_id)
    release = releases.find(session, stored.record.release)
    if not viewer.may_see(releases.project_of(session, release.id), release.panel_id):
        raise NotFound("record", record_id)
