"""Whether the server answers and its database can be read."""

from fastapi import APIRouter

from app.storage import projects
from app.storage.sessions import reading
from app.web.database import Database

router = APIRouter()


@router.get("/healthz")
def health(database: Database) -> dict[str, str]:
    """`{"status": "ok"}` after a real read of the database."""
    with reading(database) as session:
        projects.list_all(session)
    return {"status": "ok"}
