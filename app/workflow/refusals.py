"""Why a change is not made. Nothing is written when one of these is raised.

ChangeRefused
├── BadCommand          the command itself is not usable
├── CommandReused       the command id was used before, for something else
├── Stale               the panel has another revision than the change was based on
├── ProjectStale        the same for what a project holds
├── NotReleased         a panel that cannot be released as it is
└── UndoRefused         there is nothing to undo or redo, or someone has touched it since
"""

from collections.abc import Sequence

from app.panel.faults import Fault
from app.panel.things import Document


class ChangeRefused(Exception):
    """A change that is not made."""


class BadCommand(ChangeRefused):
    """The command itself is not usable."""


class CommandReused(ChangeRefused):
    """The command id was used before, for something else."""

    def __init__(self, command_id: str) -> None:
        self.command_id = command_id
        super().__init__(f"command {command_id}: found another change under this id, expected the same one or a new id")


class Stale(ChangeRefused):
    """The panel has another revision; carries what is needed to choose.

    `theirs` and `mine` are what changed since the base, in words; `overlap` is whether both touch one thing, so that
    mine cannot be put on top; `document` is the panel as it is now.
    """

    def __init__(
        self, current_revision: int, document: Document, theirs: Sequence[str], mine: Sequence[str], overlap: bool
    ) -> None:
        self.current_revision = current_revision
        self.document = document
        self.theirs = tuple(theirs)
        self.mine = tuple(mine)
        self.overlap = overlap
        super().__init__(f"panel: found revision {current_revision} since this change began; {self._advice()}")

    def _advice(self) -> str:
        theirs = "; ".join(self.theirs) or "no lasting change"
        choice = "drop this change" if self.overlap else "put this change on top, or drop it"
        return f"in between: {theirs}. Choices: {choice}"


class ProjectStale(ChangeRefused):
    """What the project holds has changed since this change began."""

    def __init__(self, found: str, expected: str) -> None:
        super().__init__(f"project: found {found}, expected {expected}; read it again")


class UndoRefused(ChangeRefused):
    """There is nothing to undo or redo, or someone has touched it since; `reason` says which, in words."""

    def __init__(self, reason: str) -> None:
        self.reason = reason
        super().__init__(reason)


class NotReleased(ChangeRefused):
    """A panel that cannot be released as it is; `faults` says why."""

    def __init__(self, faults: Sequence[Fault]) -> None:
        self.faults = tuple(faults)
        super().__init__("; ".join(f"{fault.path}: found {fault.found}, expected {fault.expected}" for fault in faults))
