"""Projects between the database and files, for the command."""

from collections.abc import Callable, Iterator
from contextlib import AbstractContextManager, contextmanager
from datetime import datetime
from pathlib import Path
from typing import Any, TypeVar

from app.panel.faults import Fault, Refused
from app.panel.wording import one_of, quoted
from app.storage import Session, accounts, backup, projects, reading, releases, restore, writing
from app.storage.errors import DatabaseRefused
from app.workflow.demonstration import open_demonstration
from app.workflow.loading import LoadedProject, check_project, load_project
from app.workflow.opening import Connections, open_data
from app.workflow.projects import create_project, project_file
from app.workflow.releasing import verify

Result = TypeVar("Result")


def import_file(database: Path, document: Any, now: datetime) -> str:
    """The id that a project file's values got; raises Refused with every fault, and nothing is stored then."""
    check_project(document)
    with _opened(database) as engine, writing(engine) as session:
        return create_project(session, document, now).project


def export_file(database: Path, wanted: str) -> dict[str, Any]:
    """The project file of the project with this id or name; raises Refused when there is none or more than one."""
    with _existing(database) as engine, reading(engine) as session:
        return project_file(session, _project_id(session, wanted))


def export_values(database: Path, wanted: str) -> LoadedProject:
    """The same project as values, all of one moment."""
    with _existing(database) as engine, reading(engine) as session:
        return load_project(session, _project_id(session, wanted))


def bring_in_demonstration(database: Path, now: datetime) -> None:
    """The demonstration projects in a database, made when it is not there."""
    with _opened(database) as engine, writing(engine) as session:
        open_demonstration(session, now)


def prepare(database: Path) -> bool:
    """A database that can be served: made, or looked at and brought up to date; whether somebody owns it.

    Raises StorageError.
    """
    with _opened(database) as engine, reading(engine) as session:
        return any(one.role == "owner" and not one.disabled_at for one in accounts.every(session))


def with_accounts(database: Path, act: Callable[[Session], Result]) -> Result:
    """Does something with the accounts of a database, made when it is not there; raises StorageError, Refused."""
    database.parent.mkdir(parents=True, exist_ok=True)
    with _opened(database) as engine, writing(engine) as session:
        return act(session)


def back_up(database: Path, copy: Path) -> Path:
    """A checked copy of the database, while the server runs or not; raises StorageError."""
    with _existing(database) as engine:
        return backup(engine, copy)


def put_back(copy: Path, database: Path) -> Path | None:
    """A copy in place of the database; where what it held is kept now. Raises StorageError."""
    database.parent.mkdir(parents=True, exist_ok=True)
    return restore(copy, database)


def verify_releases(database: Path) -> tuple[int, tuple[str, ...]]:
    """How many releases there are, and what is no longer as it was released, in words; raises StorageError."""
    with _existing(database) as engine, reading(engine) as session:
        rows = releases.every(session)
        faults = [f"{row.head.mark} rev {row.letter}, {fault}" for row in rows for fault in verify(session, row)]
    return len(rows), tuple(faults)


@contextmanager
def _opened(database: Path) -> Iterator[Connections]:
    engine = open_data(database)
    try:
        yield engine
    finally:
        engine.dispose()


def _existing(database: Path) -> AbstractContextManager[Connections]:
    if not database.exists():
        raise DatabaseRefused(f"{database}: found no file, expected a database; import, serve and restore make one")
    return _opened(database)


def _project_id(session: Session, wanted: str) -> str:
    lines = projects.list_all(session)
    found = [line.id for line in lines if line.id == wanted] or [line.id for line in lines if line.name == wanted]
    if len(found) == 1:
        return found[0]
    if found:
        raise Refused([Fault("PROJECT", f"{len(found)} projects named {quoted(wanted)}", one_of(found, ""))])
    names = [f"{line.id} ({line.name})" for line in lines]
    raise Refused([Fault("PROJECT", quoted(wanted), one_of(names, wanted) if names else "an id; there is no project")])
