"""Undo and redo, each person their own: a step back is a revision like any other and never takes another's work."""

from dataclasses import replace
from datetime import datetime

from app.panel.things import Changes, apply_changes, conflicts, inverse
from app.panel.things_in_words import in_words
from app.storage import Session, commands, panels
from app.storage.commands import StoredCommand
from app.storage.panels import StoredPanel
from app.workflow.editing import Check
from app.workflow.panel_log import (
    Gesture,
    Saved,
    changes_of,
    changes_since,
    first_answer,
    newest_done,
    newest_undone,
    record,
    since_base,
    stale,
)
from app.workflow.refusals import UndoRefused


def undo(
    session: Session, panel_id: str, *, person: str, command_id: str, base_revision: int, now: datetime, check: Check
) -> Saved:
    """Takes back this person's newest edit that is not undone; the session is one of `writing`.

    Raises UndoRefused when there is none or a thing it touched differs now, and as `save_on_top`.
    """
    gesture = Gesture(panel_id, command_id, person, "undo", base_revision, now)
    return first_answer(session, gesture) or _step_back(session, gesture, _standing(session, gesture), check)


def redo(
    session: Session, panel_id: str, *, person: str, command_id: str, base_revision: int, now: datetime, check: Check
) -> Saved:
    """Makes again what this person undid last; an edit of theirs since leaves nothing. Raises as `undo`."""
    gesture = Gesture(panel_id, command_id, person, "redo", base_revision, now)
    return first_answer(session, gesture) or _step_back(session, gesture, _undone(session, gesture), check)


def _standing(session: Session, gesture: Gesture) -> StoredCommand | None:
    """The command whose effect undo takes away: the edit, or the last redo of it."""
    line = newest_done(commands.lines(session, gesture.panel_id, person=gesture.person))
    if line is None:
        return None
    return commands.newest_of_target(session, line.id, "redo") or commands.find(session, line.id)


def _undone(session: Session, gesture: Gesture) -> StoredCommand | None:
    """The undo whose effect redo takes away."""
    line = newest_undone(commands.lines(session, gesture.panel_id, person=gesture.person))
    return commands.find(session, line.id) if line else None


def _step_back(session: Session, gesture: Gesture, step: StoredCommand | None, check: Check) -> Saved:
    panel = panels.find(session, gesture.panel_id)
    if step is None:
        raise UndoRefused(f"nothing to {gesture.kind}")
    back = inverse(changes_of(step))
    if gesture.base_revision != panel.revision:
        _, theirs = since_base(session, panel, gesture.base_revision)
        raise stale(panel, theirs, mine=back)
    _refuse_touched(session, panel, gesture, step)
    document = apply_changes(panel.document, back)
    check(document)
    return record(session, panel, replace(gesture, label=step.label), document, target=step.target or step.id)


def _refuse_touched(session: Session, panel: StoredPanel, gesture: Gesture, step: StoredCommand) -> None:
    since = changes_since(session, panel.id, step.revision)
    met = conflicts(changes_of(step), since)
    if met:
        raise UndoRefused(f"cannot {gesture.kind} “{step.label}”, touched since: {_told(met, since)}")


def _told(met: list[str], since: Changes) -> str:
    return "; ".join(in_words({key: since[key] for key in met if key in since}) or met)
