"""The demonstration: invented buildings in files of our own, brought in once and found again."""

from datetime import datetime
from pathlib import Path

from app.documents.project_file import read_text
from app.storage import Session, projects
from app.workflow.loading import check_project
from app.workflow.projects import create_project
from app.workflow.releasing import freeze, release

RELEASED = slice(1, 2)
"""Which panels of a project's first wall are released, so that there is something at the bed."""

WHY = "For casting, first release"

FOLDER = Path(__file__).parents[2] / "demo_data"


def demonstration_files() -> tuple[Path, ...]:
    """The project files that come with the program, by name; none when they were left out."""
    return tuple(sorted(FOLDER.glob("*.json")))


def open_demonstration(session: Session, now: datetime) -> str | None:
    """The id of the first demonstration project, all of them brought in if they are not there; None without files."""
    ids = [_project(session, path, now) for path in reversed(demonstration_files())]
    return ids[-1] if ids else None


def _project(session: Session, path: Path, now: datetime) -> str:
    file = check_project(read_text(path.read_bytes()))
    known = {line.name: line.id for line in projects.list_all(session)}
    if file["name"] in known:
        return known[file["name"]]
    made = create_project(session, file, now)
    for wall in made.walls[:1]:
        for panel_id in wall.panels[RELEASED]:
            release(session, freeze(session, panel_id), why=WHY, person="Demonstration", now=now)
    return made.project
