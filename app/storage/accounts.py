"""Accounts and their sessions; of passwords and tokens only hashes are kept."""

import secrets
from dataclasses import dataclass
from datetime import datetime, timedelta
from hashlib import sha256
from typing import Literal, get_args

from sqlmodel import Session, col, select

from app.storage.errors import NotFound
from app.storage.tables import Account, SignIn
from app.storage.text import moment, new_id, time_text

Role = Literal["owner", "detailer", "manager", "foreman", "viewer"]
ROLES: tuple[Role, ...] = get_args(Role)

LASTS = timedelta(days=14)
USED_EVERY = timedelta(minutes=5)
_TOKEN_BYTES = 24


@dataclass(frozen=True, slots=True)
class StoredAccount:
    id: str
    name: str
    role: Role
    password_hash: str
    created_at: datetime
    disabled_at: datetime | None


@dataclass(frozen=True, slots=True)
class StoredSignIn:
    """A session: on which device it was begun, and when it was used last."""

    id: str
    account_id: str
    device: str
    created_at: datetime
    last_used_at: datetime
    expires_at: datetime


def insert(session: Session, name: str, role: Role, password_hash: str, now: datetime) -> StoredAccount:
    """A new account; the caller has looked that the name is free."""
    row = Account(
        id=new_id(),
        name=name,
        folded=name.casefold(),
        role=role,
        password_hash=password_hash,
        created_at=time_text(now),
    )
    session.add(row)
    session.flush()
    return _stored(row)


def every(session: Session) -> tuple[StoredAccount, ...]:
    """All accounts by name, disabled ones too."""
    return tuple(map(_stored, session.exec(select(Account).order_by(col(Account.folded)))))


def named(session: Session, name: str) -> StoredAccount | None:
    row = session.exec(select(Account).where(Account.folded == name.casefold())).first()
    return _stored(row) if row else None


def find(session: Session, account_id: str) -> StoredAccount:
    return _stored(_row(session, account_id))


def set_role(session: Session, account_id: str, role: Role) -> None:
    row = _row(session, account_id)
    row.role = role
    session.add(row)
    session.flush()


def set_password(session: Session, account_id: str, password_hash: str) -> None:
    row = _row(session, account_id)
    row.password_hash = password_hash
    session.add(row)
    session.flush()


def disable(session: Session, account_id: str, now: datetime) -> None:
    """Nobody signs in with it any more; its sessions end."""
    row = _row(session, account_id)
    row.disabled_at = row.disabled_at or time_text(now)
    session.add(row)
    session.flush()
    end_sessions(session, account_id, now)


def begin_session(session: Session, account_id: str, device: str, now: datetime) -> str:
    """A new session; its token, which cannot be read again."""
    token = secrets.token_urlsafe(_TOKEN_BYTES)
    at = time_text(now)
    row = SignIn(
        id=new_id(),
        account_id=account_id,
        token_hash=_hash(token),
        device=device,
        created_at=at,
        last_used_at=at,
        expires_at=time_text(now + LASTS),
    )
    session.add(row)
    session.flush()
    return token


def by_token(session: Session, token: str, now: datetime) -> tuple[StoredAccount, StoredSignIn] | None:
    """Whose session a token is; None for one that never was, has ended or is too old, and for a disabled account."""
    row = session.exec(select(SignIn).where(SignIn.token_hash == _hash(token))).first()
    if row is None or row.ended_at is not None or row.expires_at <= time_text(now):
        return None
    account = _row(session, row.account_id)
    return None if account.disabled_at else (_stored(account), _session(row))


def mark_used(session: Session, session_id: str, now: datetime) -> None:
    row = session.get(SignIn, session_id)
    if row is not None:
        row.last_used_at = time_text(now)
        session.add(row)
        session.flush()


def sessions_of(session: Session, account_id: str, now: datetime) -> tuple[StoredSignIn, ...]:
    """Sessions that are open, the newest first."""
    rows = select(SignIn).where(SignIn.account_id == account_id, col(SignIn.ended_at).is_(None))
    rows = rows.where(col(SignIn.expires_at) > time_text(now)).order_by(col(SignIn.created_at).desc())
    return tuple(map(_session, session.exec(rows)))


def end_sessions(session: Session, account_id: str, now: datetime, *, but: str = "", only: str = "") -> None:
    """Ends an account's sessions: all, all `but` one, or `only` one."""
    for one in sessions_of(session, account_id, now):
        if one.id != but and only in ("", one.id):
            row = session.get(SignIn, one.id)
            assert row is not None
            row.ended_at = time_text(now)
            session.add(row)
    session.flush()


def _row(session: Session, account_id: str) -> Account:
    row = session.get(Account, account_id)
    if row is None:
        raise NotFound("account", account_id)
    return row


def _hash(token: str) -> str:
    return sha256(token.encode("utf-8", "surrogatepass")).hexdigest()


def _stored(row: Account) -> StoredAccount:
    role = next(role for role in ROLES if role == row.role)
    disabled = moment(row.disabled_at) if row.disabled_at else None
    return StoredAccount(row.id, row.name, role, row.password_hash, moment(row.created_at), disabled)


def _session(row: SignIn) -> StoredSignIn:
    times = (moment(text) for text in (row.created_at, row.last_used_at, row.expires_at))
    return StoredSignIn(row.id, row.account_id, row.device, *times)
