"""What a person can undo and redo on a panel now."""

from dataclasses import dataclass

from app.storage import Session, commands
from app.workflow.panel_log import newest_done, newest_undone


@dataclass(frozen=True, slots=True)
class Steps:
    """The label of the next undo and the next redo, None where there is none."""

    undo: str | None
    redo: str | None


def steps_of(session: Session, panel_id: str, person: str) -> Steps:
    """Read from the log, so that it is the same after a reload."""
    undo = newest_done(commands.lines(session, panel_id, person=person))
    redo = newest_undone(commands.lines(session, panel_id, person=person))
    return Steps(undo.label if undo else None, redo.label if redo else None)
