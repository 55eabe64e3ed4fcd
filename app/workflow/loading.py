"""From rows to values: a project, or one panel with what it stands in."""

import json
from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import datetime
from functools import lru_cache
from typing import Any

from app.documents.project_file import bond_names, read_panel, read_panel_of, read_project, read_stored, sizes_of
from app.lengths import Unit
from app.panel.project import Project, Wall
from app.panel.things import Document
from app.panel.values import Panel
from app.storage import Session, panels, projects
from app.storage.errors import NotFound
from app.storage.panels import StoredPanel
from app.storage.projects import StoredWall
from app.workflow.panel_log import Saved
from app.workflow.projects import project_file


@dataclass(frozen=True, slots=True)
class LoadedPanel:
    """One panel as values, and its row's id, revision and time."""

    id: str
    project_id: str
    wall_id: str
    revision: int
    saved_at: datetime
    document: Document
    project: Project
    wall: Wall
    panel: Panel


@dataclass(frozen=True, slots=True)
class LoadedWall:
    """One wall as values with its panels in order."""

    id: str
    wall: Wall
    panels: tuple[LoadedPanel, ...]


@dataclass(frozen=True, slots=True)
class LoadedProject:
    """A project as values, all of one moment."""

    id: str
    revision: int
    project: Project
    walls: tuple[LoadedWall, ...]

    @property
    def panels(self) -> tuple[LoadedPanel, ...]:
        return tuple(panel for wall in self.walls for panel in wall.panels)


def load_project(session: Session, project_id: str) -> LoadedProject:
    """Every wall and panel of a project; raises NotFound."""
    whole = projects.read_whole(session, project_id)
    project = read_stored(project_file(session, project_id))
    walls = tuple(
        _loaded_wall(project, value, wall, whole.panels[wall.id])
        for value, wall in zip(project.walls, whole.walls, strict=True)
    )
    return LoadedProject(project_id, whole.project.revision, project, walls)


def load_panel(session: Session, panel_id: str) -> LoadedPanel:
    """One panel in its wall, with its project's own values; raises NotFound."""
    around = projects.read_around(session, panel_id)
    project = read_project(around.project.settings | {"walls": [around.wall.settings | {"panels": []}]})
    values = tuple(_read_stored(project, one.document) for one in around.panels)
    loaded = _loaded_wall(project, replace(project.walls[0], panels=values), around.wall, around.panels)
    return next(panel for panel in loaded.panels if panel.id == panel_id)


def panel_inputs(session: Session, panel_id: str) -> Document:
    """The project file with this panel's wall alone, as it is stored: all that the panel's results rest on."""
    around = projects.read_around(session, panel_id)
    wall = around.wall.settings | {"panels": [one.document for one in around.panels]}
    return around.project.settings | {"walls": [wall]}


def after_saving(session: Session, before: LoadedPanel, saved: Saved) -> LoadedPanel:
    """The panel as it is once a change was saved in this session: of all that was read before, only it is another."""
    if saved.revision <= before.revision:
        return load_panel(session, before.id)
    return replace(with_document(before, saved.document), revision=saved.revision, saved_at=saved.at)


def with_document(before: LoadedPanel, document: Document) -> LoadedPanel:
    """The panel with another document, in its wall; raises Refused for one that cannot be."""
    panel = _read_stored(before.project, document)
    beside = tuple(panel if one.mark == before.panel.mark else one for one in before.wall.panels)
    return replace(before, document=document, wall=replace(before.wall, panels=beside), panel=panel)


def wall_of(session: Session, project_id: str, wall_id: str) -> StoredWall:
    """A wall of this project and no other; raises NotFound."""
    wall = projects.find_wall(session, wall_id)
    if wall.project_id != project_id:
        raise NotFound("wall", wall_id)
    return wall


def panel_of(session: Session, project_id: str, panel_id: str) -> StoredPanel:
    """A panel of this project and no other; raises NotFound."""
    if panels.project_of(session, panel_id) != project_id:
        raise NotFound("panel", panel_id)
    return panels.find(session, panel_id)


def check_project(document: Any) -> dict[str, Any]:
    """The project file itself; raises Refused with every fault in it."""
    read_project(document)
    checked: dict[str, Any] = document
    return checked


def panel_value(project: Project, document: Document) -> Panel:
    """A panel's document as a value, in this project's unit, sizes and bonds; raises Refused."""
    return read_panel_of(project, document)


def checking(session: Session, project_id: str) -> Callable[[Document], None]:
    """A check of panel documents against this project's unit, sizes and bonds, which raises Refused."""
    project = read_project(projects.find(session, project_id).settings | {"walls": []})

    def check(document: Document) -> None:
        panel_value(project, document)

    return check


def _read_stored(project: Project, document: Document) -> Panel:
    """A stored panel, read once for as long as its document and the names it may use are the same."""
    return _read_once(json.dumps(document), _unit(project), tuple(sizes_of(project)), bond_names(project))


@lru_cache(maxsize=512)
def _read_once(document: str, unit: Unit, sizes: tuple[str, ...], bonds: tuple[str, ...]) -> Panel:
    return read_panel(json.loads(document), unit, sizes, bonds)


def _unit(project: Project) -> Unit:
    return "mm" if project.length_unit == "mm" else "in"


def _loaded_wall(project: Project, value: Wall, wall: StoredWall, rows: tuple[StoredPanel, ...]) -> LoadedWall:
    return LoadedWall(
        wall.id,
        value,
        tuple(
            LoadedPanel(
                id=row.id,
                project_id=wall.project_id,
                wall_id=wall.id,
                revision=row.revision,
                saved_at=row.updated_at,
                document=row.document,
                project=project,
                wall=value,
                panel=panel,
            )
            for row, panel in zip(rows, value.panels, strict=True)
        ),
    )
