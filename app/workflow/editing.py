"""Saving a panel: each save names the revision it was based on, and none overwrites another unseen."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime

from app.panel.things import Document, apply_changes, changes, conflicts
from app.storage import Session, commands, panels
from app.storage.commands import CommandLine
from app.workflow.panel_log import Gesture, Saved, first_answer, record, since_base, stale

Check = Callable[[Document], None]


@dataclass(frozen=True, slots=True)
class HistoryRow:
    """One line of a panel's history; `undone` is whether this edit is undone now."""

    command_id: str
    label: str
    person: str
    revision: int
    at: datetime
    kind: str
    undone: bool


def save(
    session: Session,
    panel_id: str,
    *,
    base_revision: int,
    command_id: str,
    person: str,
    label: str,
    document: Document,
    now: datetime,
) -> Saved:
    """Makes `document` the panel's next revision; the session is one of `writing`, the document is checked.

    The same command again gets its first answer again. Raises CommandReused, Stale, NotFound, MarkTaken.
    """
    gesture = Gesture(panel_id, command_id, person, "edit", base_revision, now, label, document)
    known = first_answer(session, gesture)
    if known:
        return known
    panel = panels.find(session, panel_id)
    if base_revision != panel.revision:
        base, theirs = since_base(session, panel, base_revision)
        raise stale(panel, theirs, mine=changes(base, document))
    return record(session, panel, gesture, document, target=None)


def save_on_top(
    session: Session,
    panel_id: str,
    *,
    base_revision: int,
    command_id: str,
    person: str,
    label: str,
    document: Document,
    now: datetime,
    check: Check,
) -> Saved:
    """Makes only what `document` changes on its base the next revision, on top of what others changed since.

    Raises Stale where both touch one thing, whatever `check` raises on the document that results, and as `save`.
    """
    gesture = Gesture(panel_id, command_id, person, "edit", base_revision, now, label, document)
    known = first_answer(session, gesture)
    if known:
        return known
    panel = panels.find(session, panel_id)
    base, theirs = since_base(session, panel, base_revision)
    mine = changes(base, document)
    if conflicts(mine, theirs):
        raise stale(panel, theirs, mine)
    together = apply_changes(panel.document, mine) if theirs else document
    check(together)
    return record(session, panel, gesture, together, target=None)


def history(session: Session, panel_id: str) -> tuple[HistoryRow, ...]:
    """Every command on a panel, newest first."""
    panels.find(session, panel_id)
    lines = tuple(commands.lines(session, panel_id))
    last = {line.target: line.kind for line in reversed(lines) if line.target}
    return tuple(_row(line, undone=last.get(line.id) == "undo") for line in lines)


def _row(line: CommandLine, *, undone: bool) -> HistoryRow:
    return HistoryRow(line.id, line.label, line.person, line.revision, line.at, line.kind, undone)
