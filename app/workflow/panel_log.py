"""A panel and its log kept in step: every revision is one command, and every earlier document can be had back."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime
from hashlib import sha256
from itertools import tee
from typing import Literal

from app.panel.things import Changes, Document, apply_changes, as_json, changes, composed, conflicts, from_json, inverse
from app.panel.things_in_words import in_words
from app.storage import Session, commands, panels
from app.storage.commands import CommandLine, StoredCommand
from app.storage.panels import StoredPanel
from app.storage.text import json_text
from app.workflow.refusals import BadCommand, CommandReused, Stale

_LONGEST_ID = 64


@dataclass(frozen=True, slots=True)
class Gesture:
    """What a person asked for: `document` is the panel as they want it, None for undo and redo."""

    panel_id: str
    command_id: str
    person: str
    kind: Literal["edit", "undo", "redo"]
    base_revision: int
    now: datetime
    label: str = ""
    document: Document | None = None

    def __post_init__(self) -> None:
        if not 1 <= len(self.command_id) <= _LONGEST_ID:
            found = f"{len(self.command_id)} characters"
            raise BadCommand(f"command id: found {found}, expected 1 to {_LONGEST_ID}")
        if not (self.command_id.isascii() and self.command_id.isprintable()):
            raise BadCommand("command id: found signs that do not print, expected letters, figures and dashes")
        if not self.person:
            raise BadCommand("person: found none, expected who makes the change")

    @property
    def request(self) -> str:
        """A fingerprint of what was asked: two requests with one id must agree in it."""
        asked = [self.panel_id, self.person, self.kind, self.base_revision, self.document]
        return sha256(json_text(asked).encode()).hexdigest()


@dataclass(frozen=True, slots=True)
class Saved:
    """The answer to a change: the panel after it, and what this person can undo and redo then."""

    revision: int
    document: Document
    changes: Changes
    undo_label: str | None
    redo_label: str | None
    at: datetime


def first_answer(session: Session, gesture: Gesture) -> Saved | None:
    """The answer given before to the same command, None for a new one; raises CommandReused."""
    known = commands.find(session, gesture.command_id)
    if known is None:
        return None
    if known.request != gesture.request:
        raise CommandReused(gesture.command_id)
    document = document_at(session, panels.find(session, known.panel_id), known.revision)
    return _answer(session, gesture, document, known.revision, changes_of(known), known.at)


def record(session: Session, panel: StoredPanel, gesture: Gesture, document: Document, target: str | None) -> Saved:
    """Writes the next revision and its command; an edit that changes nothing writes nothing."""
    changed = changes(panel.document, document)
    if gesture.kind == "edit" and not changed:
        return _answer(session, gesture, panel.document, panel.revision, changed, panel.updated_at)
    if "mark" in changed:
        project_id = panels.project_of(session, panel.id)
        panels.refuse_taken_mark(session, project_id, str(document.get("mark", "")), panel.id)
    written = panels.write(session, panel.id, document, gesture.now)
    commands.insert(session, _command(gesture, written.revision, changed, target))
    return _answer(session, gesture, document, written.revision, changed, written.updated_at)


def document_at(session: Session, panel: StoredPanel, revision: int) -> Document:
    """The panel's document as an earlier revision left it."""
    return apply_changes(panel.document, inverse(changes_since(session, panel.id, revision)))


def changes_since(session: Session, panel_id: str, revision: int) -> Changes:
    """What differs now from what a revision left."""
    return composed(map(changes_of, reversed(commands.since(session, panel_id, revision))))


def changes_of(command: StoredCommand) -> Changes:
    """What a command changed."""
    return from_json(command.before, command.after)


def since_base(session: Session, panel: StoredPanel, base_revision: int) -> tuple[Document, Changes]:
    """The document that a change was based on and what others changed since; raises Stale for an unknown base."""
    if not 1 <= base_revision <= panel.revision:
        put_back = f"the panel was put back to revision {panel.revision}"
        raise Stale(panel.revision, panel.document, [put_back], (), overlap=True)
    theirs = changes_since(session, panel.id, base_revision)
    return apply_changes(panel.document, inverse(theirs)), theirs


def stale(panel: StoredPanel, theirs: Changes, mine: Changes) -> Stale:
    """The refusal of a change whose panel has moved on."""
    overlap = bool(conflicts(mine, theirs))
    return Stale(panel.revision, panel.document, in_words(theirs), in_words(mine), overlap)


def newest_done(lines: Iterable[CommandLine]) -> CommandLine | None:
    """The edit that undo would take: the newest whose last undo, if any, was redone. Lines come newest first."""
    last: dict[str | None, str] = {}
    for line in lines:
        if line.kind != "edit":
            last.setdefault(line.target, line.kind)
        elif last.get(line.id) != "undo":
            return line
    return None


def newest_undone(lines: Iterable[CommandLine]) -> CommandLine | None:
    """The undo that redo would take back; an edit made since leaves none. Lines come newest first."""
    seen: set[str | None] = set()
    for line in lines:
        if line.kind == "edit":
            return None
        if line.kind == "undo" and line.target not in seen:
            return line
        seen.add(line.target)
    return None


def _answer(
    session: Session, gesture: Gesture, document: Document, revision: int, changed: Changes, at: datetime
) -> Saved:
    done, undone = tee(commands.lines(session, gesture.panel_id, person=gesture.person, until=revision))
    undo, redo = newest_done(done), newest_undone(undone)
    return Saved(revision, document, changed, _label(undo), _label(redo), at)


def _label(line: CommandLine | None) -> str | None:
    return line.label if line else None


def _command(gesture: Gesture, revision: int, changed: Changes, target: str | None) -> StoredCommand:
    before, after = as_json(changed)
    return StoredCommand(
        id=gesture.command_id,
        panel_id=gesture.panel_id,
        person=gesture.person,
        label=gesture.label,
        base_revision=gesture.base_revision,
        revision=revision,
        before=before,
        after=after,
        kind=gesture.kind,
        target=target,
        request=gesture.request,
        at=gesture.now,
    )
