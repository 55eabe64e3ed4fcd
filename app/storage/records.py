"""Records from the bed: each exactly once under its id, in the order of device and arrival, never altered."""

from collections.abc import Collection
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy.orm import defer
from sqlmodel import Session, col, select

from app.panel.record import Record
from app.storage import tables
from app.storage.errors import NotFound
from app.storage.tables import RecordPhoto, RecordRefused, Release
from app.storage.text import json_text, json_value, moment, time_text


@dataclass(frozen=True, slots=True)
class StoredRecord:
    """A record, when it arrived as which, and by what link or account it came."""

    record: Record
    arrival: int
    received_at: datetime
    came_by: str


def find(session: Session, record_id: str) -> StoredRecord | None:
    row = session.exec(select(tables.Record).where(tables.Record.id == record_id)).first()
    return _stored(row) if row else None


def insert(session: Session, record: Record, came_by: str, now: datetime) -> StoredRecord:
    """A record that is not there yet; the caller has looked in this transaction."""
    row = tables.Record(
        id=record.id,
        release_id=record.release,
        device=record.device,
        sequence=record.sequence,
        kind=record.kind,
        body=json_text(dict(record.body)),
        corrects=record.corrects,
        digest=record.digest,
        device_at=record.at,
        received_at=time_text(now),
        came_by=came_by,
    )
    session.add(row)
    session.flush()
    return _stored(row)


def keep_refused(session: Session, record: Record, why: str, now: datetime) -> None:
    """What came under the id of another record, once each; the device has it too."""
    held = select(RecordRefused).where(RecordRefused.record_id == record.id, RecordRefused.digest == record.digest)
    if session.exec(held).first():
        return
    content = {
        "device": record.device,
        "sequence": record.sequence,
        "release": record.release,
        "kind": record.kind,
        "body": dict(record.body),
        "at": record.at,
        "corrects": record.corrects,
    }
    row = RecordRefused(
        record_id=record.id, digest=record.digest, content=json_text(content), why=why, received_at=time_text(now)
    )
    session.add(row)
    session.flush()


def of_panel(session: Session, panel_id: str, after: int = 0) -> tuple[StoredRecord, ...]:
    """Records on any release of a panel that arrived after `after`: device by device in its own order."""
    rows = select(tables.Record).join(Release).where(Release.panel_id == panel_id, col(tables.Record.arrival) > after)
    return tuple(map(_stored, session.exec(rows.order_by(*_ORDER))))


def of_releases(session: Session, release_ids: Collection[str]) -> tuple[StoredRecord, ...]:
    """Records on these releases, in the order that counts."""
    rows = select(tables.Record).where(col(tables.Record.release_id).in_(release_ids))
    return tuple(map(_stored, session.exec(rows.order_by(*_ORDER))))


def missing(session: Session, record_ids: Collection[str]) -> tuple[str, ...]:
    """Those of the ids that are not stored here."""
    there = set(session.exec(select(tables.Record.id).where(col(tables.Record.id).in_(record_ids))))
    return tuple(each for each in record_ids if each not in there)


def add_photo(session: Session, record_id: str, digest: str, content: bytes, now: datetime) -> str:
    """The digest of the record's photo: this one, or the one that was there first; raises NotFound for no record."""
    if find(session, record_id) is None:
        raise NotFound("record", record_id)
    held = session.get(RecordPhoto, record_id)
    if held is None:
        session.add(RecordPhoto(record_id=record_id, digest=digest, content=content, received_at=time_text(now)))
        session.flush()
        return digest
    return held.digest


def photo(session: Session, record_id: str) -> bytes:
    row = session.get(RecordPhoto, record_id)
    if row is None:
        raise NotFound("photo", record_id)
    return row.content


def with_photos(session: Session, record_ids: Collection[str]) -> frozenset[str]:
    """Those of the records that have a photo."""
    rows = select(RecordPhoto).options(defer(RecordPhoto.content)).where(col(RecordPhoto.record_id).in_(record_ids))  # type: ignore[arg-type]
    return frozenset(row.record_id for row in session.exec(rows))


_ORDER = (col(tables.Record.device), col(tables.Record.sequence), col(tables.Record.arrival))


def _stored(row: tables.Record) -> StoredRecord:
    record = Record(
        id=row.id,
        device=row.device,
        sequence=row.sequence,
        release=row.release_id,
        kind=row.kind,
        body=json_value(row.body),
        at=row.device_at,
        corrects=row.corrects,
        digest=row.digest,
    )
    return StoredRecord(record, row.arrival or 0, moment(row.received_at), row.came_by)
