"""The log: one command a revision, never changed afterwards."""

import sys
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime
from typing import Any, cast

from sqlalchemy.orm import InstrumentedAttribute, defer
from sqlmodel import Session, col, select

from app.storage.tables import Command
from app.storage.text import json_text, json_value, moment, time_text

_PAGE = 8
"""Lines read at a time: what can be undone is nearly always among the newest few."""


@dataclass(frozen=True, slots=True)
class StoredCommand:
    """One gesture: what it changed, on which revision it was based and which it made."""

    id: str
    panel_id: str
    person: str
    label: str
    base_revision: int
    revision: int
    before: dict[str, Any]
    after: dict[str, Any]
    kind: str
    target: str | None
    request: str
    at: datetime


@dataclass(frozen=True, slots=True)
class CommandLine:
    """A command without what it changed: enough for a history and for what can be undone."""

    id: str
    person: str
    label: str
    revision: int
    kind: str
    target: str | None
    at: datetime


def insert(session: Session, command: StoredCommand) -> None:
    session.add(
        Command(
            id=command.id,
            panel_id=command.panel_id,
            person=command.person,
            label=command.label,
            base_revision=command.base_revision,
            revision=command.revision,
            before=json_text(command.before),
            after=json_text(command.after),
            kind=command.kind,
            target=command.target,
            request=command.request,
            at=time_text(command.at),
        )
    )
    session.flush()


def find(session: Session, command_id: str) -> StoredCommand | None:
    row = session.get(Command, command_id)
    return _stored(row) if row else None


def since(session: Session, panel_id: str, revision: int) -> tuple[StoredCommand, ...]:
    """The commands that made later revisions than this one, newest first."""
    later = select(Command).where(Command.panel_id == panel_id, Command.revision > revision)
    return tuple(map(_stored, session.exec(later.order_by(col(Command.revision).desc()))))


def newest_of_target(session: Session, target: str, kind: str) -> StoredCommand | None:
    """The last undo, or redo, of an edit."""
    aimed = select(Command).where(Command.target == target, Command.kind == kind)
    row = session.exec(aimed.order_by(col(Command.revision).desc())).first()
    return _stored(row) if row else None


def lines(
    session: Session, panel_id: str, *, person: str | None = None, until: int | None = None
) -> Iterator[CommandLine]:
    """The log of a panel, newest first, read as far as it is used: one person's, up to a revision, if asked."""
    wanted = select(Command).where(Command.panel_id == panel_id).order_by(col(Command.revision).desc()).limit(_PAGE)
    wanted = wanted.options(defer(_column(Command.before)), defer(_column(Command.after)))
    if person is not None:
        wanted = wanted.where(Command.person == person)
    revision = sys.maxsize if until is None else until
    while found := session.exec(wanted.where(Command.revision <= revision)).all():
        yield from map(_line, found)
        revision = found[-1].revision - 1


def _column(field: str) -> InstrumentedAttribute[str]:
    return cast("InstrumentedAttribute[str]", field)


def _line(row: Command) -> CommandLine:
    return CommandLine(row.id, row.person, row.label, row.revision, row.kind, row.target, moment(row.at))


def _stored(row: Command) -> StoredCommand:
    return StoredCommand(
        id=row.id,
        panel_id=row.panel_id,
        person=row.person,
        label=row.label,
        base_revision=row.base_revision,
        revision=row.revision,
        before=json_value(row.before),
        after=json_value(row.after),
        kind=row.kind,
        target=row.target,
        request=row.request,
        at=moment(row.at),
    )
