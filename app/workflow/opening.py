"""The database at start: its folder made, the file opened and brought up to date."""

from pathlib import Path

from app.storage import Engine, migrate, open_database

Connections = Engine
"""What `reading` and `writing` take; the way to the database for rooms that know nothing of rows."""


def open_data(database: Path) -> Connections:
    """Opens the file, or makes it with its folder; raises DatabaseRefused for one that cannot be trusted."""
    database.parent.mkdir(parents=True, exist_ok=True)
    engine = open_database(database)
    migrate(engine)
    return engine
