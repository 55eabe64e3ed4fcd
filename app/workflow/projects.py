"""Projects as files in and out, and what they hold: walls, panels, their order, their settings."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from app.panel.things import Document, changes, same_as_typed
from app.storage import Session, panels, projects
from app.storage.panels import StoredPanel
from app.storage.projects import StoredProject, StoredWall
from app.workflow.editing import save
from app.workflow.panel_log import Saved, document_at, since_base, stale
from app.workflow.refusals import CommandReused, ProjectStale


@dataclass(frozen=True, slots=True)
class WallIds:
    """A wall's id and its panels' ids in order."""

    wall: str
    panels: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ProjectIds:
    """The ids that a project file got, in its order."""

    project: str
    walls: tuple[WallIds, ...]


def create_project(session: Session, file: dict[str, Any], now: datetime) -> ProjectIds:
    """Stores a whole project file, which the caller has checked."""
    project = projects.insert(session, str(file.get("name", "")), _emptied(file, "walls"), now)
    walls = tuple(_insert_wall(session, project.id, wall, now) for wall in file.get("walls", []))
    return ProjectIds(project.id, walls)


def project_file(session: Session, project_id: str) -> dict[str, Any]:
    """The project file, with every key where it stood in the one that was stored."""
    whole = projects.read_whole(session, project_id)
    walls = [
        _filled(wall.settings, "panels", [panel.document for panel in whole.panels[wall.id]]) for wall in whole.walls
    ]
    return _filled(whole.project.settings, "walls", walls)


def update_settings(
    session: Session, project_id: str, settings: dict[str, Any], *, base_revision: int, now: datetime
) -> StoredProject:
    """Replaces everything of a project file but its walls; the same values again make no revision."""
    project = projects.find(session, project_id)
    if project.revision != base_revision:
        raise ProjectStale(f"revision {project.revision}", f"revision {base_revision}")
    emptied = _emptied(settings, "walls")
    if "walls" not in emptied and "walls" in project.settings:
        emptied["walls"] = []
    if same_as_typed(emptied, project.settings):
        return project
    return projects.write(session, project_id, emptied, str(settings.get("name", project.name)), now)


def add_wall(session: Session, project_id: str, wall: dict[str, Any], now: datetime) -> WallIds:
    """A wall, with its panels if it has any, behind the others."""
    for document in wall.get("panels", []):
        panels.refuse_taken_mark(session, project_id, str(document.get("mark", "")), None)
    ids = _insert_wall(session, project_id, wall, now)
    projects.bump(session, project_id, now)
    return ids


def add_panel(
    session: Session,
    wall_id: str,
    document: Document,
    now: datetime,
    *,
    position: int | None = None,
    panel_id: str | None = None,
) -> StoredPanel:
    """A panel at a place in a wall, the last if none is given.

    With an id that the client made, the same again succeeds once. Raises CommandReused for another panel under this
    id, MarkTaken, NotFound.
    """
    if panel_id is not None and panels.exists(session, panel_id):
        return _same_again(session, wall_id, document, panel_id)
    wall = projects.find_wall(session, wall_id)
    panels.refuse_taken_mark(session, wall.project_id, str(document.get("mark", "")), None)
    order = [panel.id for panel in panels.list_of_wall(session, wall_id)]
    added = panels.insert(session, wall_id, len(order), document, now, panel_id)
    order.insert(len(order) if position is None else position, added.id)
    return _placed(session, wall, order, added.id, now)


def remove_panel(session: Session, panel_id: str, *, base_revision: int, now: datetime) -> None:
    """Takes a panel out of its wall; it is kept with its log. Raises Stale when it was changed since."""
    panel = panels.find(session, panel_id)
    if panel.revision != base_revision:
        _, theirs = since_base(session, panel, base_revision)
        raise stale(panel, theirs, mine={})
    projects.bump(session, panels.project_of(session, panel_id), now)
    panels.remove(session, panel_id, now)


def put_back_panel(session: Session, panel_id: str, now: datetime) -> StoredPanel:
    """A removed panel at its old place in the wall. Raises MarkTaken when another panel has its mark by now."""
    panel = panels.put_back(session, panel_id)
    wall = projects.find_wall(session, panel.wall_id)
    panels.refuse_taken_mark(session, wall.project_id, panel.mark, panel_id)
    order = [other.id for other in panels.list_of_wall(session, wall.id) if other.id != panel_id]
    order.insert(panel.position, panel_id)
    return _placed(session, wall, order, panel_id, now)


def rename_panel(
    session: Session, panel_id: str, mark: str, *, base_revision: int, command_id: str, person: str, now: datetime
) -> Saved:
    """An edit of the mark alone, in the log like any other."""
    base, _ = since_base(session, panels.find(session, panel_id), base_revision)
    label = f"mark {mark}"
    command: dict[str, Any] = {"base_revision": base_revision, "command_id": command_id, "person": person}
    return save(session, panel_id, label=label, document=base | {"mark": mark}, now=now, **command)


def reorder_panels(session: Session, wall_id: str, panel_ids: Sequence[str], now: datetime) -> None:
    """The panels of a wall in another order. Raises ProjectStale unless exactly its panels are named."""
    wall = projects.find_wall(session, wall_id)
    there = [panel.id for panel in panels.list_of_wall(session, wall_id)]
    if sorted(there) != sorted(panel_ids):
        raise ProjectStale(f"{len(panel_ids)} panels in the new order", f"each of the {len(there)} of wall {wall.mark}")
    if there != list(panel_ids):
        panels.place(session, panel_ids)
        projects.bump(session, wall.project_id, now)


def _insert_wall(session: Session, project_id: str, wall: dict[str, Any], now: datetime) -> WallIds:
    stored = projects.insert_wall(session, project_id, str(wall.get("mark", "")), _emptied(wall, "panels"))
    added = [
        panels.insert(session, stored.id, position, document, now)
        for position, document in enumerate(wall.get("panels", []))
    ]
    return WallIds(stored.id, tuple(panel.id for panel in added))


def _placed(session: Session, wall: StoredWall, order: list[str], panel_id: str, now: datetime) -> StoredPanel:
    panels.place(session, order)
    projects.bump(session, wall.project_id, now)
    return panels.find(session, panel_id)


def _same_again(session: Session, wall_id: str, document: Document, panel_id: str) -> StoredPanel:
    panel = panels.find(session, panel_id)
    first = document_at(session, panel, 1)
    if panel.wall_id != wall_id or changes(first, document):
        raise CommandReused(panel_id)
    return panel


def _emptied(whole: dict[str, Any], name: str) -> dict[str, Any]:
    """Without the parts that are rows of their own; their key keeps its place."""
    return {key: [] if key == name else value for key, value in whole.items()}


def _filled(emptied: dict[str, Any], name: str, parts: list[Any]) -> dict[str, Any]:
    filled = {key: parts if key == name else value for key, value in emptied.items()}
    return filled | {name: parts} if parts else filled
