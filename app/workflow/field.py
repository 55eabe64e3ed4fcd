"""Records from the bed taken in: acknowledged means stored, exactly once, and nothing that came is thrown away."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime
from typing import Any, Literal

from app.panel.faults import Refused
from app.panel.record import Record, read_record
from app.storage import Session, records, releases
from app.storage.errors import NotFound

MOST_IN_BATCH = 50
ANOTHER = "This id stands for another record, which was here first. Both are kept; tell the office."
NOT_HERE = "There is no such release here."

MayRecord = Callable[[str, str], bool]
"""Whether who sends may record on this panel of this project: project's id, panel's id."""


@dataclass(frozen=True, slots=True)
class Answer:
    """What became of one record; id and digest are those that came, for the device to hold against its own."""

    id: str
    digest: str
    state: Literal["stored", "refused"]
    status: int
    why: str = ""


def take(session: Session, value: Any, may: MayRecord, came_by: str, now: datetime) -> Answer:
    """One record in a session of `writing`; the same again gets the same answer again."""
    try:
        record = read_record(value)
    except Refused as refused:
        faults = "; ".join(f"{fault.path}: found {fault.found}, expected {fault.expected}" for fault in refused.faults)
        return Answer(_text(value, "id"), _text(value, "digest"), "refused", 422, faults)
    if not _is_open(session, record, may):
        return Answer(record.id, record.digest, "refused", 404, NOT_HERE)
    known = records.find(session, record.id)
    if known is None:
        records.insert(session, record, came_by, now)
    elif known.record.digest != record.digest:
        records.keep_refused(session, record, ANOTHER, now)
        return Answer(record.id, record.digest, "refused", 422, ANOTHER)
    return Answer(record.id, record.digest, "stored", 200)


def _is_open(session: Session, record: Record, may: MayRecord) -> bool:
    """Also for a panel that was removed since: what was recorded on it is kept."""
    try:
        release = releases.find(session, record.release)
        return may(releases.project_of(session, release.id), release.panel_id)
    except NotFound:
        return False


def _text(value: Any, key: str) -> str:
    found = value.get(key) if isinstance(value, dict) else None
    return found[:64] if isinstance(found, str) else ""
