"""What is computed, for scripts: layout, drawings at true scale, takeoff, submittal."""

from typing import Annotated, Any, Literal

from fastapi import APIRouter, Query, Response

from app.documents.results import layout_result, takeoff_result
from app.documents.submittal_parts import PARTS, SETS, parts_named
from app.documents.takeoff_list import takeoff_csv
from app.drawing.scales import ISO_SCALES, QUARTER_INCH, SHEETS, US_SCALES
from app.drawing.svg import svg_document
from app.order.values import Takeoff
from app.panel.faults import Fault, Refused
from app.storage import reading
from app.web.conditions import tag
from app.web.database import Database, Now
from app.web.scope import HOW, WHOLE, panels_in
from app.workflow.compute import Computed, compute, takeoff_of
from app.workflow.issuing import VIEWS, submittal_of
from app.workflow.loading import LoadedPanel, LoadedProject, load_panel, load_project
from app.workflow.opening import Connections
from app.workflow.ordering import order_workbook

router = APIRouter(prefix="/api", tags=["results"])

View = Literal["elevation", "bed", "sheets", "story-pole", "returns", "colours"]

SCALES = {f"{scale.ratio:g}": scale for scale in (*US_SCALES, *ISO_SCALES)}
"""The scales of the standards by their ratio; 48 is 1/4 in. to the foot."""

Of = Annotated[str, Query(max_length=80, description=f"Which panels: {HOW}.")]
SheetName = Annotated[str, Query(description=f"Size of the sheets: {', '.join(SHEETS)}.")]
PartNames = Annotated[
    str,
    Query(max_length=200, description=f"What it holds, with commas: {', '.join((*SETS, *PARTS))}; approval if none."),
]
Ratio = Annotated[str, Query(alias="scale", description=f"Real size over paper size: {', '.join(SCALES)}.")]


@router.get("/panels/{panel_id}/layout")
def layout(panel_id: str, response: Response, database: Database) -> dict[str, Any]:
    """Everything computed for one panel: the same values as `castcourse layout`."""
    panel = _panel(panel_id, database)
    found = _computed(panel)
    response.headers["etag"] = tag(panel.revision)
    computed = found.layout, found.plan, found.cutting, found.drift, found.takeoff, found.saw
    return layout_result(panel.project, panel.wall, panel.panel, *computed)


@router.get("/panels/{panel_id}/{view}.svg", response_class=Response)
def drawing(panel_id: str, view: View, database: Database, ratio: Ratio = f"{QUARTER_INCH.ratio:g}") -> Response:
    """A drawing on paper at true scale."""
    if ratio not in SCALES:
        raise Refused([Fault("scale", ratio, f"one of {', '.join(SCALES)}")])
    panel = _panel(panel_id, database)
    drawn = VIEWS[view](_computed(panel), SCALES[ratio], panel.project.length_unit)
    headers = {"etag": tag(panel.revision), "cache-control": "no-cache"}
    return Response(svg_document(drawn, "print"), media_type="image/svg+xml", headers=headers)


@router.get("/projects/{project_id}/takeoff")
@router.get("/projects/{project_id}/takeoff.json")
def takeoff_json(project_id: str, database: Database, of: Of = WHOLE) -> dict[str, Any]:
    """What to order for the whole project, or for the panels asked for."""
    return takeoff_result(_takeoff(*_scope(project_id, database, of)))


@router.get("/projects/{project_id}/takeoff.csv", response_class=Response)
def takeoff_as_csv(project_id: str, database: Database, of: Of = WHOLE) -> Response:
    """The same lines as comma-separated text."""
    text = takeoff_csv(takeoff_result(_takeoff(*_scope(project_id, database, of)))["lines"])
    return Response(text, media_type="text/csv; charset=utf-8", headers=_as_file())


@router.get("/projects/{project_id}/takeoff.xlsx", response_class=Response)
def takeoff_as_workbook(project_id: str, database: Database, now: Now, of: Of = WHOLE) -> Response:
    """The same lines as a workbook, with what is behind them: a sheet a topic."""
    book = order_workbook(*_scope(project_id, database, of), now.astimezone().date())
    media_type = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"
    return Response(book, media_type=media_type, headers=_as_file())


@router.get("/projects/{project_id}/submittal.pdf", response_class=Response)
def submittal(project_id: str, database: Database, now: Now, sheet: SheetName = "", parts: PartNames = "") -> Response:
    """Drawings, schedules, checkpoints, order and cautions for approval, or other parts."""
    project = _project(project_id, database)
    if sheet and sheet not in SHEETS:
        raise Refused([Fault("sheet", sheet, f"one of {', '.join(SHEETS)}")])
    pdf = submittal_of(project, now.astimezone().date(), sheet, _parts(parts))
    return Response(pdf, media_type="application/pdf", headers=_as_file())


def _parts(names: str) -> frozenset[str]:
    """Names with commas between them; raises Refused for one that is no part."""
    asked = [name.strip() for name in names.split(",") if name.strip()]
    if unknown := [name for name in asked if name not in SETS and name not in PARTS]:
        raise Refused([Fault("parts", unknown[0], f"one of {', '.join((*SETS, *PARTS))}")])
    return parts_named(asked)


def _panel(panel_id: str, database: Database) -> LoadedPanel:
    with reading(database) as session:
        return load_panel(session, panel_id)


def _project(project_id: str, database: Database) -> LoadedProject:
    with reading(database) as session:
        return load_project(session, project_id)


def _computed(panel: LoadedPanel) -> Computed:
    return compute(panel.project, panel.wall, panel.panel)


def _scope(project_id: str, database: Connections, of: str) -> tuple[LoadedProject, str, tuple[LoadedPanel, ...]]:
    """The project, the scope's title, its panels."""
    loaded = _project(project_id, database)
    return loaded, *panels_in(loaded, of)


def _takeoff(loaded: LoadedProject, _: str, panels: tuple[LoadedPanel, ...]) -> Takeoff:
    return takeoff_of(loaded.project, [_computed(panel) for panel in panels])


def _as_file() -> dict[str, str]:
    """Without a name of its own a download gets the one its page gives it."""
    return {"content-disposition": "attachment", "cache-control": "no-store"}
