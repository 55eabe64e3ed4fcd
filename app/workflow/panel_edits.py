"""One edit of one panel, from its name and a form's fields to the next revision."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from functools import partial

from app.brickwork.bonds import BONDS
from app.documents.project_file import read_panel, sizes_of, write_panel
from app.panel.edits import edit_from
from app.panel.project import Project
from app.panel.things import Document
from app.panel.values import Panel
from app.storage import Session, panels
from app.workflow.editing import save, save_on_top
from app.workflow.loading import settings_of
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


def edit_panel(session: Session, panel_id: str, asked: AskedEdit, now: datetime) -> Saved:
    """Makes the edit on the panel as the person saw it and saves the result.

    The session is one of `writing`. Raises Refused for fields or a panel that cannot be, and as `save`; with `on_top`
    what others changed since stays where it does not overlap.
    """
    project = settings_of(session, panel_id)
    base, _ = since_base(session, panels.find(session, panel_id), asked.base_revision)
    label, document = _edited(project, base, asked)

    def check(together: Document) -> None:
        _read(project, together)

    write = partial(save_on_top, check=check) if asked.on_top else save
    return write(
        session,
        panel_id,
        base_revision=asked.base_revision,
        command_id=asked.command_id,
        person=asked.person,
        label=label,
        document=document,
        now=now,
    )


def _edited(project: Project, base: Document, asked: AskedEdit) -> tuple[str, Document]:
    unit = project.length_unit
    panel = _read(project, base)
    edit = edit_from(asked.name, asked.values, unit, sizes_of(project), BONDS)
    return edit.label(panel, unit), write_panel(edit.apply(panel, unit), unit, like=base)


def _read(project: Project, document: Document) -> Panel:
    return read_panel(document, project.length_unit, sizes_of(project).keys(), BONDS.keys())
