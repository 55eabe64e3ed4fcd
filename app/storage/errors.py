"""What storage refuses, and why.

StorageError
├── NotFound            no row with this id, or one that was removed
├── MarkTaken           another panel of the project has this mark
├── ReadingOnly         a write in a session that was opened for reading
├── DatabaseBusy        another writer held the database longer than the busy timeout
├── DiskFull            no room left on the disk; nothing was written
├── BackupFailed        a copy could not be made, or did not pass its checks
└── DatabaseRefused     the file cannot be opened as a database of this program
    ├── DamagedDatabase     it does not pass its checks
    ├── ForeignDatabase     it is another program's
    ├── NewerDatabase       a later version of the program has migrated it
    └── WrongSettings       a connection does not keep the settings that safety rests on
"""

from pathlib import Path


class StorageError(Exception):
    """Anything that storage refuses."""


class NotFound(StorageError):
    """No row with this id, or one that was removed."""

    def __init__(self, noun: str, identifier: str) -> None:
        self.noun = noun
        self.identifier = identifier
        super().__init__(f"{noun} {identifier}: not found")


class MarkTaken(StorageError):
    """Another panel of the project has this mark."""

    def __init__(self, mark: str) -> None:
        self.mark = mark
        super().__init__(f"mark: found {mark}, which another panel of this project has; expected a mark of its own")


class ReadingOnly(StorageError):
    """A write in a session that was opened for reading."""


class DatabaseBusy(StorageError):
    """Another writer held the database longer than the busy timeout."""


class DiskFull(StorageError):
    """No room left on the disk; nothing was written."""


class BackupFailed(StorageError):
    """A copy could not be made, or did not pass its checks."""


class DatabaseRefused(StorageError):
    """The file cannot be opened as a database of this program."""


class DamagedDatabase(DatabaseRefused):
    """The file does not pass its checks; `newest_backup` is the newest good copy beside it."""

    def __init__(self, path: Path, found: str, newest_backup: Path | None) -> None:
        self.path = path
        self.newest_backup = newest_backup
        advice = f"newest good backup: {newest_backup}" if newest_backup else "no good backup beside it"
        super().__init__(f"{path}: found a damaged database ({found}), expected a sound one; {advice}")


class ForeignDatabase(DatabaseRefused):
    """The file is another program's database."""


class NewerDatabase(DatabaseRefused):
    """A later version of the program has migrated the file."""


class WrongSettings(DatabaseRefused):
    """A connection does not keep the settings that safety rests on."""
