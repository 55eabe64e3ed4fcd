"""The database: the only room that knows a row. Queries are functions that take a Session, one module a noun."""

from sqlalchemy import Engine

from app.storage.backups import backup, restore
from app.storage.engine import open_database
from app.storage.migrations import migrate
from app.storage.sessions import Session, reading, writing

__all__ = ["Engine", "Session", "backup", "migrate", "open_database", "reading", "restore", "writing"]
