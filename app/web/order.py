"""The Order screen: what to buy for a panel, a wall, a casting day or the project, and what is short."""

from typing import Annotated

from fastapi import APIRouter, Query
from starlette.responses import HTMLResponse

from app.storage import reading
from app.web.database import Database, Now
from app.web.order_short import short_part
from app.web.order_view import page_of
from app.web.pages import show
from app.web.scope import WHOLE, panels_in
from app.workflow.compute import compute, saved_of, takeoff_of
from app.workflow.loading import load_project
from app.workflow.stock import short_of

router = APIRouter(prefix="/projects/{project_id}/order", include_in_schema=False)

Of = Annotated[str, Query(max_length=80)]


@router.get("")
def order(project_id: str, database: Database, now: Now, of: Of = WHOLE) -> HTMLResponse:
    """The page of one scope; what is short is always the whole project's, as deliveries are."""
    with reading(database) as session:
        loaded = load_project(session, project_id)
    title, panels = panels_in(loaded, of)
    computed = [compute(panel.project, panel.wall, panel.panel) for panel in panels]
    found = takeoff_of(loaded.project, computed)
    short = short_part(short_of(loaded, now.astimezone().date()))
    return show("order.html", page_of(loaded, of, title, panels, found, short, saved_of(loaded.project, computed)))
