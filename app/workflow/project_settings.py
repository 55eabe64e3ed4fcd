"""What a project's panels share and may be changed any day: liner, order, bed temperatures, blend, deliveries."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from app.panel.faults import Fault, Refused
from app.panel.wording import one_of, quoted
from app.storage import Session, projects
from app.workflow.compute import compute
from app.workflow.loading import check_project, load_project
from app.workflow.projects import project_file, update_settings
from app.workflow.refusals import ProjectStale

GROUPS = ("liner", "day", "order", "blend", "deliveries")
"""Keys of the project file that can be changed here; units, sizes and bonds are what panels were typed in."""


@dataclass(frozen=True, slots=True)
class SettingsChange:
    """The project's revision after a change, and what its groups held before, as typed; None for one not there."""

    revision: int
    before: Mapping[str, Any]


def settings_of(session: Session, project_id: str) -> tuple[int, dict[str, Any]]:
    """The project's revision and its groups as typed, those that are there; raises NotFound."""
    project = projects.find(session, project_id)
    return project.revision, {name: project.settings[name] for name in GROUPS if name in project.settings}


def set_project(
    session: Session, project_id: str, asked: Mapping[str, Any], *, base_revision: int, now: datetime
) -> SettingsChange:
    """Sets whole groups of GROUPS; None leaves a group to its defaults, the same as typed makes no revision.

    Every panel is laid out with them before they are kept. Raises ProjectStale when the project was changed since,
    NotFound, and Refused with every fault for what cannot be used.
    """
    project = projects.find(session, project_id)
    if project.revision != base_revision:
        raise ProjectStale(f"revision {project.revision}", f"revision {base_revision}")
    _refuse_others(asked)
    before = {name: project.settings.get(name) for name in asked}
    settings = {name: value for name, value in (project.settings | dict(asked)).items() if value is not None}
    written = update_settings(session, project_id, settings, base_revision=base_revision, now=now)
    if written.revision != base_revision:
        _lay_out(session, project_id)
    return SettingsChange(written.revision, before)


def _refuse_others(asked: Mapping[str, Any]) -> None:
    others = [Fault(name, f"the key {quoted(name)}", one_of(GROUPS, name)) for name in asked if name not in GROUPS]
    if others:
        raise Refused(others)


def _lay_out(session: Session, project_id: str) -> None:
    """The whole file read and every panel as it would stand: what cannot be laid out is not saved."""
    check_project(project_file(session, project_id))
    loaded = load_project(session, project_id)
    for panel in loaded.panels:
        compute(loaded.project, panel.wall, panel.panel)
