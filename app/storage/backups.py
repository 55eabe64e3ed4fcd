"""Copies that are checked before they count, and putting one back. Both are safe while the server runs."""

import os
import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager, suppress
from pathlib import Path

from sqlalchemy import Engine

from app.storage.checks import is_database, quick_fault, whole_fault
from app.storage.engine import database_path, file_of
from app.storage.errors import BackupFailed
from app.storage.text import new_id


def backup(engine: Engine, dest: Path) -> Path:
    """A checked copy of the database as it is at one moment; `dest` holds it whole or is left as it was."""
    _copy_checked(file_of(engine), dest.absolute())
    return dest


def restore(src: Path, path: Path | str) -> Path | None:
    """Puts a copy back in place of the database; what it held is kept beside it, and that file is returned."""
    source, target = src.absolute(), database_path(path)
    _refuse_unsound(source)
    if source == target:
        raise BackupFailed(f"{source}: found the database itself, expected a copy of it")
    if not target.exists():
        _copy_checked(source, target)
        return None
    return _restore_over(source, target)


def free_name(path: Path, purpose: str) -> Path:
    """A name beside `path` that says what the copy is for and is not taken."""
    names = (path.with_name(f"{path.stem}.{purpose}{count}{path.suffix}") for count in _counts())
    return next(name for name in names if not name.exists())


def _counts() -> Iterator[str]:
    yield ""
    count = 2
    while True:
        yield f"-{count}"
        count += 1


def _restore_over(source: Path, target: Path) -> Path:
    if is_database(target) and quick_fault(target) is None:
        kept = free_name(target, "backup-before-restore")
        _copy_checked(target, kept)
        _copy(source, target)
        return kept
    kept = free_name(target, "damaged")
    for ending in ("", "-wal", "-shm"):
        with suppress(FileNotFoundError):
            Path(f"{target}{ending}").rename(f"{kept}{ending}")
    _copy_checked(source, target)
    return kept


def _refuse_unsound(source: Path) -> None:
    fault = whole_fault(source) if is_database(source) else "no database"
    if fault:
        raise BackupFailed(f"{source}: found {fault}, expected a sound copy of a database")


def _copy_checked(source: Path, dest: Path) -> None:
    if source == dest:
        raise BackupFailed(f"{dest}: found the database itself, expected another file")
    if not dest.parent.is_dir():
        raise BackupFailed(f"{dest}: found no folder {dest.parent}, expected one that exists")
    with _scratch(dest) as part:
        _copy(source, part)
        fault = whole_fault(part)
        if fault:
            raise BackupFailed(f"{dest}: found {fault} in the copy, expected a sound one; nothing was replaced")
        _replace(part, dest)


@contextmanager
def _scratch(dest: Path) -> Iterator[Path]:
    part = dest.with_name(f"{dest.name}.{new_id()}.part")
    try:
        yield part
    finally:
        part.unlink(missing_ok=True)


def _copy(source: Path, dest: Path) -> None:
    """By SQLite's backup API: one moment of a database in use, written in one transaction."""
    with closing(sqlite3.connect(source, timeout=5)) as old, closing(sqlite3.connect(dest, timeout=5)) as new:
        new.execute("PRAGMA synchronous = FULL")
        try:
            old.backup(new)
        except sqlite3.Error as error:
            raise BackupFailed(f"{dest}: found {error} while copying, expected a whole copy") from error


def _replace(part: Path, dest: Path) -> None:
    _make_plain(part)
    os.replace(part, dest)
    folder = os.open(dest.parent, os.O_RDONLY)
    try:
        os.fsync(folder)
    finally:
        os.close(folder)


def _make_plain(part: Path) -> None:
    """Out of WAL, so that the one file is the whole copy."""
    with closing(sqlite3.connect(part)) as connection:
        connection.execute("PRAGMA journal_mode = DELETE")
