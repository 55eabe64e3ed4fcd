"""The log of who did what beside the drawings: accounts, sessions, links, releases; only ever added to."""

from dataclasses import dataclass
from datetime import datetime

from sqlmodel import Session, col, select

from app.storage.tables import Audit
from app.storage.text import moment, time_text


@dataclass(frozen=True, slots=True)
class AuditLine:
    at: datetime
    who: str
    what: str
    about: str


def note(session: Session, who: str, what: str, about: str, now: datetime) -> None:
    """One line, in the transaction of what it tells of."""
    session.add(Audit(at=time_text(now), who=who, what=what, about=about))
    session.flush()


def newest(session: Session, most: int = 200) -> tuple[AuditLine, ...]:
    """The last lines, the newest first."""
    rows = session.exec(select(Audit).order_by(col(Audit.id).desc()).limit(most))
    return tuple(AuditLine(moment(row.at), row.who, row.what, row.about) for row in rows)
