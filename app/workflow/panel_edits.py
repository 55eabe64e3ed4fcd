"""One edit of one panel, from its name and a form's fields to the next revision."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from functools import partial

from app.documents.project_file import bond_names, laid_by, read_panel_of, sizes_of, write_panel
from app.panel.edits import edit_from
from app.panel.project import Project
from app.panel.things import Document
from app.panel.values import Panel
from app.storage import Session, panels
from app.workflow.editing import save, save_on_top
from app.workflow.loading import LoadedPanel, with_document
from app.workflow.panel_log import Saved, since_base


@dataclass(frozen=True, slots=True)
class AskedEdit:
    """What a person asks for: the edit's name and fields as typed, the revision they saw, and the command's own id."""

    name: str
    values: Mapping[str, str]
    base_revision: int
    command_id: str
    person: str
    on_top: bool = False


def edit_panel(session: Session, loaded: LoadedPanel, asked: AskedEdit, now: datetime) -> Saved:
    """Makes the edit on the panel as the person saw it and saves the result; `loaded` is the panel as it is.

    The session is one of `writing`. Raises Refused for fields or a panel that cannot be, and as `save`; with `on_top`
    what others changed since stays where it does not overlap.
    """
    project = loaded.project
    label, document = _edited(project, *_as_seen(session, loaded, asked.base_revision), asked.name, asked.values)

    def check(together: Document) -> None:
        _read(project, together)

    write = partial(save_on_top, check=check) if asked.on_top else save
    return write(
        session,
        loaded.id,
        base_revision=asked.base_revision,
        command_id=asked.command_id,
        person=asked.person,
        label=label,
        document=document,
        now=now,
    )


def as_edited(loaded: LoadedPanel, name: str, values: Mapping[str, str]) -> LoadedPanel:
    """The panel as an edit would make it, saved nowhere; raises Refused for fields or a panel that cannot be."""
    _, document = _edited(loaded.project, loaded.document, loaded.panel, name, values)
    return with_document(loaded, document)


def _as_seen(session: Session, loaded: LoadedPanel, base_revision: int) -> tuple[Document, Panel]:
    """The panel that the person had in view: the present one, or an earlier one from the log."""
    if base_revision == loaded.revision:
        return loaded.document, loaded.panel
    base, _ = since_base(session, panels.find(session, loaded.id), base_revision)
    return base, _read(loaded.project, base)


def _edited(
    project: Project, base: Document, panel: Panel, name: str, values: Mapping[str, str]
) -> tuple[str, Document]:
    unit = project.length_unit
    edit = edit_from(name, values, unit, sizes_of(project), bond_names(project))
    after = laid_by(project, edit.apply(panel, unit))
    return edit.label(panel, unit), write_panel(after, unit, like=base)


def _read(project: Project, document: Document) -> Panel:
    return read_panel_of(project, document)
