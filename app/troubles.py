"""What a command of the shell cannot do, said in one line a fault."""

from argparse import Namespace
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from app.panel.faults import Refused
from app.settings import Settings


class Trouble(Exception):
    """What a command cannot do, one line each."""

    def __init__(self, *lines: str) -> None:
        self.lines = lines
        super().__init__("\n".join(lines))


def why(error: OSError) -> str:
    return (error.strerror or str(error)).lower()


@contextmanager
def faults_named(name: str) -> Iterator[None]:
    """Every fault as a line that begins with the name of what it is in."""
    try:
        yield
    except Refused as refused:
        raise Trouble(*(f"{name}: {fault}" for fault in refused.faults)) from refused


@contextmanager
def storage_named() -> Iterator[None]:
    from app.storage.errors import StorageError

    try:
        yield
    except StorageError as error:
        raise Trouble(str(error)) from error
    except OSError as error:
        raise Trouble(f"{error.filename}: found {why(error)}, expected a place to write") from error


def database_of(arguments: Namespace) -> Path:
    return Settings(data=arguments.data).database
