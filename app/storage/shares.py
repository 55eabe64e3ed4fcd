"""Share links: the token is given out once, only its hash is kept."""

import hmac
import secrets
from dataclasses import dataclass
from datetime import datetime
from hashlib import sha256
from typing import Literal

from sqlmodel import Session, col, select

from app.storage import panels, projects
from app.storage.errors import NotFound
from app.storage.tables import Share
from app.storage.text import moment, new_id, time_text

Rights = Literal["view", "record"]
_TOKEN_BYTES = 24


@dataclass(frozen=True, slots=True)
class StoredShare:
    """What a link opens: one panel, or the whole project when `panel_id` is None."""

    id: str
    project_id: str
    panel_id: str | None
    rights: str
    created_at: datetime
    expires_at: datetime | None
    revoked_at: datetime | None
    last_used_at: datetime | None


@dataclass(frozen=True, slots=True)
class NewShare:
    """A share with its token, which cannot be read again."""

    share: StoredShare
    token: str


def create(
    session: Session,
    project_id: str,
    panel_id: str | None,
    rights: Rights,
    now: datetime,
    expires_at: datetime | None = None,
) -> NewShare:
    """A link to a project or one of its panels; raises NotFound for a panel of another project."""
    projects.find(session, project_id)
    if panel_id is not None and panels.project_of(session, panel_id) != project_id:
        raise NotFound("panel", panel_id)
    token = secrets.token_urlsafe(_TOKEN_BYTES)
    row = Share(
        id=new_id(),
        project_id=project_id,
        panel_id=panel_id,
        token_hash=_hash(token),
        rights=rights,
        created_at=time_text(now),
        expires_at=_text(expires_at),
    )
    session.add(row)
    session.flush()
    return NewShare(_stored(row), token)


def find_by_token(session: Session, token: str, now: datetime) -> StoredShare:
    """The share that a token opens now; wrong, revoked and expired tokens are all the same NotFound."""
    wanted = _hash(token)
    row = session.exec(select(Share).where(Share.token_hash == wanted)).first()
    if row is None or not hmac.compare_digest(row.token_hash, wanted) or not _is_open(row, time_text(now)):
        raise NotFound("share", "with this token")
    return _stored(row)


def mark_used(session: Session, share_id: str, now: datetime) -> None:
    row = _row(session, share_id)
    row.last_used_at = time_text(now)
    session.add(row)
    session.flush()


def revoke(session: Session, share_id: str, now: datetime) -> StoredShare:
    """Closes a link for good; the first time counts when it is done twice."""
    row = _row(session, share_id)
    row.revoked_at = row.revoked_at or time_text(now)
    session.add(row)
    session.flush()
    return _stored(row)


def list_of_project(session: Session, project_id: str) -> tuple[StoredShare, ...]:
    """Every link of a project, revoked and expired ones too, the newest first."""
    rows = select(Share).where(Share.project_id == project_id)
    return tuple(map(_stored, session.exec(rows.order_by(col(Share.created_at).desc(), col(Share.id)))))


def _row(session: Session, share_id: str) -> Share:
    row = session.get(Share, share_id)
    if row is None:
        raise NotFound("share", share_id)
    return row


def _hash(token: str) -> str:
    return sha256(token.encode("utf-8", "surrogatepass")).hexdigest()


def _is_open(row: Share, now: str) -> bool:
    return row.revoked_at is None and (row.expires_at is None or now < row.expires_at)


def _text(when: datetime | None) -> str | None:
    return None if when is None else time_text(when)


def _moment(text: str | None) -> datetime | None:
    return None if text is None else moment(text)


def _stored(row: Share) -> StoredShare:
    return StoredShare(
        id=row.id,
        project_id=row.project_id,
        panel_id=row.panel_id,
        rights=row.rights,
        created_at=moment(row.created_at),
        expires_at=_moment(row.expires_at),
        revoked_at=_moment(row.revoked_at),
        last_used_at=_moment(row.last_used_at),
    )
