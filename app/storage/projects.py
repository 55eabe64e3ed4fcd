"""Projects and their walls."""

from dataclasses import dataclass
from datetime import datetime
from typing import Any

from sqlalchemy import func
from sqlmodel import Session, col, select

from app.storage import panels
from app.storage.errors import NotFound
from app.storage.panels import StoredPanel
from app.storage.tables import Panel, Project, Wall
from app.storage.text import json_text, json_value, moment, new_id, time_text


@dataclass(frozen=True, slots=True)
class StoredProject:
    """A project's own values; `settings` is the project file with its walls left empty."""

    id: str
    name: str
    settings: dict[str, Any]
    revision: int
    created_at: datetime
    updated_at: datetime


@dataclass(frozen=True, slots=True)
class StoredWall:
    """A wall's own values; `settings` is the wall of the file with its panels left empty."""

    id: str
    project_id: str
    position: int
    mark: str
    settings: dict[str, Any]


@dataclass(frozen=True, slots=True)
class WholeProject:
    """A project with its walls and, by wall id, their panels, all in order."""

    project: StoredProject
    walls: tuple[StoredWall, ...]
    panels: dict[str, tuple[StoredPanel, ...]]


@dataclass(frozen=True, slots=True)
class Around:
    """One panel's project and wall, and the wall's panels in order."""

    project: StoredProject
    wall: StoredWall
    panels: tuple[StoredPanel, ...]


@dataclass(frozen=True, slots=True)
class ProjectLine:
    """One line of the list of projects; `updated_at` counts its panels' changes too."""

    id: str
    name: str
    revision: int
    panels: int
    updated_at: datetime


def insert(session: Session, name: str, settings: dict[str, Any], now: datetime) -> StoredProject:
    at = time_text(now)
    row = Project(id=new_id(), name=name, settings=json_text(settings), created_at=at, updated_at=at)
    session.add(row)
    session.flush()
    return _stored(row)


def find(session: Session, project_id: str) -> StoredProject:
    return _stored(_row(session, project_id))


def read_whole(session: Session, project_id: str) -> WholeProject:
    project = find(session, project_id)
    walls = list_walls(session, project_id)
    return WholeProject(project, walls, {wall.id: panels.list_of_wall(session, wall.id) for wall in walls})


def read_around(session: Session, panel_id: str) -> Around:
    """What a panel stands in, read at once, as every edit does; raises NotFound, also for a panel that was removed."""
    asked = select(Panel.wall_id).where(Panel.id == panel_id, col(Panel.removed_at).is_(None)).scalar_subquery()
    there = select(Panel, Wall, Project).join(Wall, col(Panel.wall_id) == Wall.id).join(Project)
    there = there.where(Panel.wall_id == asked, col(Panel.removed_at).is_(None))
    rows = session.exec(there.order_by(col(Panel.position), col(Panel.id))).all()
    if not rows:
        raise NotFound("panel", panel_id)
    _, wall, project = rows[0]
    return Around(_stored(project), _stored_wall(wall), tuple(panels.stored(session, row) for row, _, _ in rows))


def list_all(session: Session) -> tuple[ProjectLine, ...]:
    """Every project, the one changed last first."""
    there = (col(Wall.project_id) == col(Project.id)) & col(Panel.removed_at).is_(None)
    count = select(func.count()).select_from(Panel).join(Wall).where(there).scalar_subquery()
    last = select(func.max(Panel.updated_at)).join(Wall).where(there).scalar_subquery()
    found = session.exec(select(Project, count, last)).all()
    lines = [_line(project, panel_count, latest) for project, panel_count, latest in found]
    return tuple(sorted(lines, key=lambda line: (line.updated_at, line.id), reverse=True))


def write(session: Session, project_id: str, settings: dict[str, Any], name: str, now: datetime) -> StoredProject:
    """New settings, which make a revision."""
    row = _row(session, project_id)
    row.settings, row.name = json_text(settings), name
    return _bumped(session, row, now)


def write_wall(session: Session, wall_id: str, settings: dict[str, Any], now: datetime) -> StoredProject:
    """New settings of a wall, which make a revision of its project; its mark stays."""
    row = session.get(Wall, wall_id)
    if row is None:
        raise NotFound("wall", wall_id)
    row.settings = json_text(settings)
    session.add(row)
    return bump(session, row.project_id, now)


def bump(session: Session, project_id: str, now: datetime) -> StoredProject:
    """A revision for a change of what the project holds: walls, panels, their order."""
    return _bumped(session, _row(session, project_id), now)


def delete(session: Session, project_id: str) -> None:
    """The project with its walls, panels, log and share links; nothing of it is kept."""
    session.delete(_row(session, project_id))
    session.flush()


def insert_wall(session: Session, project_id: str, mark: str, settings: dict[str, Any]) -> StoredWall:
    """A wall behind the last one of a project."""
    _row(session, project_id)
    last = session.exec(select(func.max(Wall.position)).where(Wall.project_id == project_id)).one()
    row = Wall(id=new_id(), project_id=project_id, position=_next(last), mark=mark, settings=json_text(settings))
    session.add(row)
    session.flush()
    return _stored_wall(row)


def find_wall(session: Session, wall_id: str) -> StoredWall:
    row = session.get(Wall, wall_id)
    if row is None:
        raise NotFound("wall", wall_id)
    return _stored_wall(row)


def list_walls(session: Session, project_id: str) -> tuple[StoredWall, ...]:
    found = session.exec(select(Wall).where(Wall.project_id == project_id).order_by(col(Wall.position)))
    return tuple(map(_stored_wall, found))


def _row(session: Session, project_id: str) -> Project:
    row = session.get(Project, project_id)
    if row is None:
        raise NotFound("project", project_id)
    return row


def _bumped(session: Session, row: Project, now: datetime) -> StoredProject:
    row.revision += 1
    row.updated_at = time_text(now)
    session.add(row)
    session.flush()
    return _stored(row)


def _next(last: int | None) -> int:
    return 0 if last is None else last + 1


def _line(row: Project, panel_count: int, latest: str | None) -> ProjectLine:
    updated_at = moment(max(row.updated_at, latest or ""))
    return ProjectLine(row.id, row.name, row.revision, panel_count, updated_at)


def _stored(row: Project) -> StoredProject:
    settings = json_value(row.settings)
    return StoredProject(row.id, row.name, settings, row.revision, moment(row.created_at), moment(row.updated_at))


def _stored_wall(row: Wall) -> StoredWall:
    return StoredWall(row.id, row.project_id, row.position, row.mark, json_value(row.settings))
