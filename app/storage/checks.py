"""Whether a database file is sound, asked of SQLite itself."""

import sqlite3
from collections.abc import Iterable
from contextlib import closing
from pathlib import Path

_DAMAGE = {sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB}
_FIRST_BYTES = b"SQLite format 3\x00"


def quick_fault(path: Path) -> str | None:
    """What `quick_check` says against a file that may be in use, or None."""
    with closing(sqlite3.connect(path, timeout=5)) as connection:
        return _fault(connection, ("PRAGMA quick_check",))


def whole_fault(path: Path) -> str | None:
    """What the full checks say against a copy that nobody writes, or None."""
    with closing(sqlite3.connect(f"{path.absolute().as_uri()}?immutable=1", uri=True)) as connection:
        return _fault(connection, ("PRAGMA integrity_check", "PRAGMA foreign_key_check")) or _foreign(connection)


def newest_good_backup(path: Path) -> Path | None:
    """The newest file beside `path`, whatever its name, that is a sound copy of such a database."""
    beside = [other for other in path.parent.iterdir() if other.name != path.name and is_database(other)]
    newest_first = sorted(beside, key=lambda other: other.stat().st_mtime_ns, reverse=True)
    return next((other for other in newest_first if whole_fault(other) is None), None)


def is_database(path: Path) -> bool:
    """Whether the file begins as every SQLite file does."""
    if not path.is_file():
        return False
    with path.open("rb") as file:
        return file.read(len(_FIRST_BYTES)) == _FIRST_BYTES


def _fault(connection: sqlite3.Connection, questions: Iterable[str]) -> str | None:
    try:
        answers = [row for question in questions for row in connection.execute(question) if row != ("ok",)]
    except sqlite3.DatabaseError as error:
        if error.sqlite_errorcode & 0xFF in _DAMAGE:
            return str(error)
        raise
    return " ".join(str(part) for part in answers[0]) if answers else None


def is_foreign(path: Path) -> bool:
    """Whether a sound file holds tables, but not this program's."""
    with closing(sqlite3.connect(path, timeout=5)) as connection:
        return _tables(connection) != set() and _foreign(connection) is not None


def _foreign(connection: sqlite3.Connection) -> str | None:
    return None if "project" in _tables(connection) else "no table of projects"


def _tables(connection: sqlite3.Connection) -> set[str]:
    return {name for (name,) in connection.execute("SELECT name FROM sqlite_schema WHERE type = 'table'")}
