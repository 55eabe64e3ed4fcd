"""What a hand can meet on a panel, for the drawing's script: asked for when the hand rests, never with an edit."""

from collections.abc import Iterator

from fastapi import APIRouter
from starlette.responses import JSONResponse

from app.brickwork.snap_lines import Neighbour, snap_corners, snap_lines
from app.storage import reading
from app.web.database import Database
from app.workflow.compute import compute
from app.workflow.loading import LoadedPanel, load_panel

router = APIRouter(prefix="/panels/{panel_id}", include_in_schema=False)


@router.get("/snap")
def snap(panel_id: str, database: Database) -> JSONResponse:
    """Lines as axis, place, kind, name and thing; corners as x, y, name and thing; inches in the face frame."""
    with reading(database) as session:
        loaded = load_panel(session, panel_id)
    layout = compute(loaded.project, loaded.wall, loaded.panel).layout
    lines = [[one.axis, round(one.at, 8), one.kind, one.name, one.of] for one in snap_lines(layout, _beside(loaded))]
    corners = [[round(one.x, 8), round(one.y, 8), one.name, one.of] for one in snap_corners(loaded.panel)]
    content = {"revision": loaded.revision, "lines": lines, "corners": corners}
    return JSONResponse(content, headers={"cache-control": "no-store"})


def _beside(loaded: LoadedPanel) -> Iterator[Neighbour]:
    """The panels left and right of this one in its wall."""
    marks = [panel.mark for panel in loaded.wall.panels]
    here = marks.index(loaded.panel.mark)
    for panel in (*loaded.wall.panels[max(0, here - 1) : here], *loaded.wall.panels[here + 1 : here + 2]):
        lift = panel.base.inches - loaded.panel.base.inches
        yield Neighbour(compute(loaded.project, loaded.wall, panel).layout, lift)
