"""Projects for scripts: file in, file out, walls and their panels."""

from typing import Any

from fastapi import APIRouter, Response

from app.storage import projects, reading, writing
from app.storage.panels import StoredPanel
from app.web.body import JsonBody, json_of
from app.web.conditions import tag
from app.web.database import Database, Now
from app.workflow.loading import check_project, checking, wall_of
from app.workflow.projects import WallIds, add_panel, add_wall, create_project, project_file

router = APIRouter(prefix="/api/projects", tags=["projects"])


@router.post("", status_code=201, openapi_extra=json_of("A project file, castcourse-project/1."))
def create(body: JsonBody, response: Response, database: Database, now: Now) -> dict[str, Any]:
    """Stores a whole project file, or nothing of it; answers the ids that its parts got."""
    document = check_project(body)
    with writing(database) as session:
        ids = create_project(session, document, now)
    response.headers["location"] = f"/api/projects/{ids.project}/file"
    return {"id": ids.project, "walls": [_wall_ids(wall) for wall in ids.walls]}


@router.get("")
def list_all(database: Database) -> list[dict[str, Any]]:
    """Every project, the one changed last first."""
    with reading(database) as session:
        lines = projects.list_all(session)
    return [
        {
            "id": line.id,
            "name": line.name,
            "revision": line.revision,
            "panels": line.panels,
            "updated_at": line.updated_at.isoformat(),
            "file": f"/api/projects/{line.id}/file",
        }
        for line in lines
    ]


@router.get("/{project_id}")
def one(project_id: str, database: Database) -> dict[str, Any]:
    """A project's ids: its walls and their panels in order."""
    with reading(database) as session:
        whole = projects.read_whole(session, project_id)
    walls = [
        {"id": wall.id, "mark": wall.mark, "panels": list(map(_panel_ids, whole.panels[wall.id]))}
        for wall in whole.walls
    ]
    return {"id": project_id, "name": whole.project.name, "revision": whole.project.revision, "walls": walls}


@router.get("/{project_id}/file")
def file(project_id: str, database: Database) -> Any:
    """The project file, as it was typed."""
    with reading(database) as session:
        return project_file(session, project_id)


@router.post("/{project_id}/walls", status_code=201, openapi_extra=json_of("A wall of a project file."))
def create_wall(project_id: str, body: JsonBody, database: Database, now: Now) -> dict[str, Any]:
    """A wall, with its panels if it has any, behind the others."""
    with writing(database) as session:
        held = project_file(session, project_id)
        check_project(held | {"walls": [*held.get("walls", []), body]})
        ids = add_wall(session, project_id, body, now)
    return _wall_ids(ids)


@router.post(
    "/{project_id}/walls/{wall_id}/panels", status_code=201, openapi_extra=json_of("A panel of a project file.")
)
def create_panel(
    project_id: str, wall_id: str, body: JsonBody, response: Response, database: Database, now: Now
) -> dict[str, Any]:
    """A panel behind the others of its wall."""
    with writing(database) as session:
        wall = wall_of(session, project_id, wall_id)
        checking(session, project_id)(body)
        panel = add_panel(session, wall.id, body, now)
    response.headers["location"] = f"/api/panels/{panel.id}"
    response.headers["etag"] = tag(panel.revision)
    return {"id": panel.id, "revision": panel.revision}


def _wall_ids(ids: WallIds) -> dict[str, Any]:
    return {"id": ids.wall, "panels": list(ids.panels)}


def _panel_ids(panel: StoredPanel) -> dict[str, Any]:
    return {"id": panel.id, "mark": panel.mark, "revision": panel.revision}
