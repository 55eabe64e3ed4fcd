"""One panel's own settings given to others of its project: what that would change, and the change itself."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime
from uuid import uuid4

from app.panel.faults import Refused
from app.panel.things import Document, changes
from app.panel.things_in_words import in_words
from app.storage import Session
from app.workflow.editing import save
from app.workflow.loading import LoadedPanel, panel_value, with_document

SETTINGS: Mapping[str, tuple[str, tuple[str, ...]]] = {
    "brick": ("Brick and bond", ("field.size", "field.bond")),
    "fit": ("What may give, and what matters", ("fit",)),
    "margin": ("Margin", ("margin",)),
    "limits": ("Smallest pieces", ("smallest_cut", "least_piece")),
    "thickness": ("Thickness", ("thickness",)),
    "laying": ("How sheets are laid", ("laying",)),
    "day": ("Casting day", ("cast_on",)),
}
"""What can be given: its words, and the keys of the panel file that hold it."""


@dataclass(frozen=True, slots=True)
class Given:
    """One other panel with the settings: as it would be (None where it cannot be), what differs, and why not."""

    before: LoadedPanel
    after: LoadedPanel | None
    differences: tuple[str, ...]
    why_not: str = ""


def given(source: LoadedPanel, others: Iterable[LoadedPanel], settings: Iterable[str]) -> Iterator[Given]:
    """Every other panel as it would be with these of the source's settings."""
    keys = [key for name in settings if name in SETTINGS for key in SETTINGS[name][1]]
    for other in others:
        document = _with(other.document, source.document, keys)
        try:
            panel_value(other.project, document)
        except Refused as refused:
            fault = refused.faults[0]
            yield Given(other, None, (), f"{fault.path}: found {fault.found}, expected {fault.expected}")
            continue
        differences = tuple(in_words(changes(other.document, document)))
        yield Given(other, with_document(other, document), differences)


def give(session: Session, each: Iterable[Given], label: str, person: str, now: datetime) -> int:
    """Saves every panel that can be and differs, each as one step of its own log; how many. Raises Stale."""
    count = 0
    for one in each:
        if one.after is None or not one.differences:
            continue
        save(
            session,
            one.before.id,
            base_revision=one.before.revision,
            command_id=uuid4().hex,
            person=person,
            label=label,
            document=one.after.document,
            now=now,
        )
        count += 1
    return count


def label_of(source: LoadedPanel, settings: Iterable[str]) -> str:
    """`As N1: margin, thickness`."""
    words = ", ".join(SETTINGS[name][0].lower() for name in settings if name in SETTINGS)
    return f"As {source.panel.mark}: {words}"


def _with(document: Document, source: Document, keys: Iterable[str]) -> Document:
    made = dict(document)
    for key in keys:
        outer, _, inner = key.partition(".")
        if inner:
            made[outer] = {**made.get(outer, {}), inner: source[outer][inner]}
        elif outer in source:
            made[outer] = source[outer]
        else:
            made.pop(outer, None)
    return made
