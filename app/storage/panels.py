"""Panels: each one JSON document with its revision and its place in a wall."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from sqlmodel import Session, col, select

from app.storage.errors import MarkTaken, NotFound
from app.storage.tables import Panel, Wall
from app.storage.text import json_text, json_value, moment, new_id, time_text


@dataclass(frozen=True, slots=True)
class StoredPanel:
    """A panel as last saved; the document is the panel of a project file, as typed."""

    id: str
    wall_id: str
    position: int
    mark: str
    document: dict[str, Any]
    revision: int
    updated_at: datetime


def insert(
    session: Session, wall_id: str, position: int, document: dict[str, Any], now: datetime, panel_id: str | None = None
) -> StoredPanel:
    """A panel at revision 1; `panel_id` is given when the client made it. The places of others are left as they are."""
    row = Panel(
        id=panel_id or new_id(),
        wall_id=wall_id,
        position=position,
        mark=_mark(document),
        document=json_text(document),
        updated_at=time_text(now),
    )
    session.add(row)
    session.flush()
    return _stored(row)


def find(session: Session, panel_id: str) -> StoredPanel:
    """The panel; raises NotFound, also for one that was removed."""
    return _stored(_row(session, panel_id))


def exists(session: Session, panel_id: str) -> bool:
    """Whether the id is in use, be it by a panel that was removed."""
    return session.get(Panel, panel_id) is not None


def stored(session: Session, row: Panel) -> StoredPanel:
    """A row that was read together with others."""
    return _stored(_held(session, row))


def project_of(session: Session, panel_id: str) -> str:
    """The id of the project that the panel belongs to."""
    wall = session.get(Wall, _row(session, panel_id).wall_id)
    if wall is None:
        raise NotFound("panel", panel_id)
    return wall.project_id


def list_of_wall(session: Session, wall_id: str) -> tuple[StoredPanel, ...]:
    there = select(Panel).where(Panel.wall_id == wall_id, col(Panel.removed_at).is_(None))
    return tuple(map(_stored, session.exec(there.order_by(col(Panel.position), col(Panel.id)))))


def removed_of_project(session: Session, project_id: str, most: int = 12) -> tuple[StoredPanel, ...]:
    """Panels that were taken out of a project and can be put back, the last one first."""
    gone = select(Panel).join(Wall).where(Wall.project_id == project_id, col(Panel.removed_at).is_not(None))
    return tuple(map(_stored, session.exec(gone.order_by(col(Panel.removed_at).desc()).limit(most))))


def write(session: Session, panel_id: str, document: dict[str, Any], now: datetime) -> StoredPanel:
    """The next revision of a panel; the caller has compared revisions in this transaction."""
    row = _row(session, panel_id)
    row.document, row.mark = json_text(document), _mark(document)
    row.revision += 1
    row.updated_at = time_text(now)
    session.add(row)
    session.flush()
    return _stored(row)


def refuse_taken_mark(session: Session, project_id: str, mark: str, panel_id: str | None) -> None:
    """Raises MarkTaken when a panel of the project other than `panel_id` has the mark."""
    having = select(Panel.id).join(Wall).where(Wall.project_id == project_id, Panel.mark == mark)
    found = session.exec(having.where(col(Panel.removed_at).is_(None), Panel.id != (panel_id or ""))).first()
    if found is not None:
        raise MarkTaken(mark)


def place(session: Session, panel_ids: Sequence[str]) -> None:
    """Gives the panels of one wall the places 0, 1, 2 … in the order given."""
    for position, panel_id in enumerate(panel_ids):
        row = _row(session, panel_id)
        row.position = position
        session.add(row)
    session.flush()


def remove(session: Session, panel_id: str, now: datetime) -> None:
    """Takes a panel out; it is kept with its log and can be put back."""
    row = _row(session, panel_id)
    row.removed_at = time_text(now)
    session.add(row)
    session.flush()


def put_back(session: Session, panel_id: str) -> StoredPanel:
    """A panel that was removed is there again."""
    row = session.get(Panel, panel_id)
    if row is None:
        raise NotFound("panel", panel_id)
    row.removed_at = None
    session.add(row)
    session.flush()
    return _stored(row)


def _row(session: Session, panel_id: str) -> Panel:
    row = session.get(Panel, panel_id)
    if row is None or row.removed_at is not None:
        raise NotFound("panel", panel_id)
    return _held(session, row)


def _held(session: Session, row: Panel) -> Panel:
    """The row, which the session would forget and read again if nobody held it."""
    session.info[row.id] = row
    return row


def _mark(document: dict[str, Any]) -> str:
    return str(document.get("mark", ""))


def _stored(row: Panel) -> StoredPanel:
    document = json_value(row.document)
    return StoredPanel(row.id, row.wall_id, row.position, row.mark, document, row.revision, moment(row.updated_at))
