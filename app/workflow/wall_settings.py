"""A wall's own settings: its datum and the joint between its panels, as typed."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from app.panel.things import same_as_typed
from app.storage import Session, projects
from app.workflow.compute import compute
from app.workflow.loading import check_project, load_project, wall_of
from app.workflow.projects import project_file
from app.workflow.refusals import ProjectStale

NAMES = ("datum", "joint")


@dataclass(frozen=True, slots=True)
class WallChange:
    """The project's revision after a change, and what the wall's settings were before, as typed; None for not said."""

    revision: int
    before: Mapping[str, Any]


def set_wall(
    session: Session, project_id: str, wall_id: str, asked: Mapping[str, Any], *, base_revision: int, now: datetime
) -> WallChange:
    """Sets what is asked for of NAMES; None leaves a setting to its default, the same as typed makes no revision.

    Raises ProjectStale when the project was changed since, NotFound, and Refused for what cannot be used.
    """
    wall, project = wall_of(session, project_id, wall_id), projects.find(session, project_id)
    if project.revision != base_revision:
        raise ProjectStale(f"revision {project.revision}", f"revision {base_revision}")
    settings = wall.settings | dict(asked)
    settings = {name: value for name, value in settings.items() if name not in NAMES or value is not None}
    before = {name: wall.settings.get(name) for name in NAMES}
    if same_as_typed(settings, wall.settings):
        return WallChange(project.revision, before)
    written = projects.write_wall(session, wall_id, settings, now)
    _lay_out(session, project_id, wall_id)
    return WallChange(written.revision, before)


def _lay_out(session: Session, project_id: str, wall_id: str) -> None:
    """Every panel of the wall as it would stand: what cannot be laid out is not saved."""
    check_project(project_file(session, project_id))
    loaded = load_project(session, project_id)
    for panel in (panel for wall in loaded.walls if wall.id == wall_id for panel in wall.panels):
        compute(loaded.project, panel.wall, panel.panel)
