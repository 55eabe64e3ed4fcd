"""The way to the database: every connection with the same safe settings, every transaction begun on purpose.

After SQLAlchemy's notes on pysqlite: the driver's own transactions are off, the begin event says how to begin.
"""

from pathlib import Path
from sqlite3 import Connection as Sqlite

from sqlalchemy import URL, Connection, Engine, create_engine, event, make_url

from app.storage.checks import is_foreign, newest_good_backup, quick_fault
from app.storage.errors import DamagedDatabase, DatabaseRefused, ForeignDatabase, WrongSettings

BEGIN = "begin"
# The waiting time comes first: switching to WAL may itself have to wait for another connection.
_SETTINGS = {"busy_timeout": 5000, "journal_mode": "wal", "synchronous": 2, "foreign_keys": 1}


def open_database(path_or_url: Path | str) -> Engine:
    """An engine on a sound SQLite file, made when it is not there; raises DatabaseRefused."""
    path = database_path(path_or_url)
    _refuse_unusable(path)
    engine = create_engine(URL.create("sqlite", database=str(path)))
    event.listen(engine, "connect", _prepare)
    event.listen(engine, "begin", _begin)
    with engine.connect():
        return engine


def database_path(path_or_url: Path | str) -> Path:
    """The file that a path or an `sqlite:///` address names; raises DatabaseRefused for any other address."""
    if isinstance(path_or_url, Path) or "://" not in path_or_url:
        return Path(path_or_url).absolute()
    url = make_url(path_or_url)
    if url.get_backend_name() != "sqlite" or not url.database:
        raise DatabaseRefused(f"database: found {url.render_as_string()}, expected a file or sqlite:///FILE")
    return Path(url.database).absolute()


def file_of(engine: Engine) -> Path:
    """The file behind an engine."""
    return Path(str(engine.url.database))


def _refuse_unusable(path: Path) -> None:
    if not path.parent.is_dir():
        raise DatabaseRefused(f"database: found no folder {path.parent}, expected one that exists")
    if not path.exists():
        return
    if not path.is_file():
        raise DatabaseRefused(f"database: found {path}, which is no file, expected a file")
    found = quick_fault(path) or _emptied(path)
    if found:
        raise DamagedDatabase(path, found, newest_good_backup(path))
    if is_foreign(path):
        raise ForeignDatabase(f"{path}: found another program's tables, expected a database of this program")


def _emptied(path: Path) -> str | None:
    """SQLite takes an empty file for a new database; with a backup beside it, it was cut to nothing."""
    return "an empty file" if path.stat().st_size == 0 and newest_good_backup(path) else None


def _prepare(connection: Sqlite, _record: object) -> None:
    connection.isolation_level = None
    for name, value in _SETTINGS.items():
        connection.execute(f"PRAGMA {name} = {value}").close()
    for name, value in _SETTINGS.items():
        found = connection.execute(f"PRAGMA {name}").fetchone()[0]
        if found != value:
            raise WrongSettings(f"database setting {name}: found {found}, expected {value}")


def _begin(connection: Connection) -> None:
    connection.exec_driver_sql(f"BEGIN {connection.get_execution_options().get(BEGIN, 'DEFERRED')}")
