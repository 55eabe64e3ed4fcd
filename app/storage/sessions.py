"""One transaction each: `reading` sees one moment of the database, `writing` is alone with it."""

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

from sqlalchemy import Engine
from sqlalchemy.exc import OperationalError
from sqlmodel import Session

from app.storage.engine import BEGIN
from app.storage.errors import DatabaseBusy, DiskFull, ReadingOnly, StorageError

__all__ = ["Session", "reading", "writing"]


class _ReadingSession(Session):
    def flush(self, objects: Any = None) -> None:
        if self.new or self.dirty or self.deleted:
            raise ReadingOnly("session: found a write, expected reading only; open it with writing()")
        super().flush(objects)


@contextmanager
def reading(engine: Engine) -> Iterator[Session]:
    """A session in one deferred transaction that is never committed; raises ReadingOnly on a write."""
    with _named_errors(), _ReadingSession(engine) as session:
        yield session


@contextmanager
def writing(engine: Engine) -> Iterator[Session]:
    """A session in one immediate transaction: committed at the end of the block, rolled back on any error."""
    with _named_errors(), Session(engine.execution_options(**{BEGIN: "IMMEDIATE"})) as session, session.begin():
        yield session


@contextmanager
def _named_errors() -> Iterator[None]:
    try:
        yield
    except OperationalError as error:
        named = _named(error)
        if named is None:
            raise
        raise named from error


def _named(error: OperationalError) -> StorageError | None:
    code = getattr(error.orig, "sqlite_errorcode", 0) & 0xFF
    if code in (sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED):
        return DatabaseBusy("database: found it held by another writer for 5 s, expected it free; nothing was written")
    if code == sqlite3.SQLITE_FULL:
        return DiskFull("disk: found no room left, expected some; nothing was written")
    return None
