"""The page of a project's settings: liner, bed temperatures, order, blend, deliveries; each form can be undone."""

from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import Annotated, Any, Literal

from fastapi import APIRouter, Query
from starlette.responses import HTMLResponse, Response

from app.panel.faults import Refused
from app.storage import reading, writing
from app.storage.errors import NotFound
from app.web.database import Database, Now
from app.web.forms import Form, then, whole_number
from app.web.pages import show
from app.web.settings_form import delivery_typed, group_typed
from app.web.settings_told import Changed, after, before_text, told_of
from app.web.settings_view import Asked, page_of
from app.workflow.compute import compute, takeoff_of
from app.workflow.loading import LoadedProject, load_project
from app.workflow.opening import Connections
from app.workflow.project_settings import set_project, settings_of
from app.workflow.refusals import ProjectStale

SINCE = (
    "Somebody changed this project since you opened the page, so its settings were left as they were. What you see now"
    " is the project as it stands; set them again if you still want to."
)

router = APIRouter(prefix="/projects/{project_id}/settings", include_in_schema=False)

Group = Literal["liner", "day", "order", "blend"]
Before = Annotated[str, Query(max_length=20_000)]
Place = Annotated[int, Query(ge=0, le=10_000)]
Change = Callable[[Mapping[str, Any]], tuple[dict[str, Any], Changed]]
"""From the groups as they stand to what is asked for, and what the page says of it."""


@router.get("")
def settings(
    project_id: str,
    database: Database,
    now: Now,
    changed: str = "",
    revision: int = 0,
    before: Before = "",
    place: Place = 0,
) -> HTMLResponse:
    """The page; after a change its address says what stood there before, so that this can be undone."""
    last = Changed(changed, revision, before, place) if changed else None
    return _page(database, project_id, now.astimezone().date().isoformat(), Asked(), last)


@router.post("/deliveries")
def add_delivery(project_id: str, database: Database, form: Form, now: Now) -> Response:
    """Something came: noted behind the others, or at the place from which it was taken back."""

    def change(held: Mapping[str, Any]) -> tuple[dict[str, Any], Changed]:
        came = list(held.get("deliveries", []))
        place = min(whole_number(form, "place"), len(came)) if "place" in form else len(came)
        came.insert(place, delivery_typed(form))
        return {"deliveries": came}, Changed("deliveries", 0, "", place)

    return _set(project_id, database, form, now, "deliveries", change)


@router.post("/deliveries/{place}/take-back")
def take_back(project_id: str, place: int, database: Database, form: Form, now: Now) -> Response:
    """A delivery noted by mistake."""

    def change(held: Mapping[str, Any]) -> tuple[dict[str, Any], Changed]:
        came = list(held.get("deliveries", []))
        if not 0 <= place < len(came):
            raise NotFound("delivery", str(place))
        one = came.pop(place)
        return {"deliveries": came or None}, Changed("deliveries", 0, before_text(one), place)

    return _set(project_id, database, form, now, "", change)


@router.post("/{group}")
def set_group(project_id: str, group: Group, database: Database, form: Form, now: Now) -> Response:
    """The values of one form, or with `whole` the group as it stood before."""

    def change(held: Mapping[str, Any]) -> tuple[dict[str, Any], Changed]:
        asked: dict[str, Any] = {group: group_typed(form, group, held.get(group))}
        return asked, Changed(group, 0, before_text(held.get(group)))

    return _set(project_id, database, form, now, group, change)


def _set(project_id: str, database: Connections, form: Form, now: Now, group: str, change: Change) -> Response:
    today = now.astimezone().date().isoformat()
    try:
        base = whole_number(form, "revision")
        with writing(database) as session:
            revision, held = settings_of(session, project_id)
            if revision != base:
                raise ProjectStale(f"revision {revision}", f"revision {base}")
            asked, changed = change(held)
            made = set_project(session, project_id, asked, base_revision=base, now=now)
    except Refused as error:
        return _page(database, project_id, today, Asked(group, form, error.faults), None)
    except ProjectStale:
        return _page(database, project_id, today, Asked(notice=SINCE), None, 412)
    if made.revision == base:
        return then(f"/projects/{project_id}/settings#{changed.group}")
    return then(after(project_id, replace(changed, revision=made.revision)))


def _page(
    database: Connections, project_id: str, today: str, asked: Asked, last: Changed | None, status: int = 200
) -> HTMLResponse:
    with reading(database) as session:
        loaded = load_project(session, project_id)
        _, document = settings_of(session, project_id)
    told = told_of(project_id, loaded.revision, loaded.project, last)
    page = page_of(loaded, document, _items(loaded), today, replace(asked, told=told))
    return show("settings.html", page, 422 if asked.faults else status)


def _items(loaded: LoadedProject) -> tuple[str, ...]:
    """The lines of the project's order that are bought."""
    computed = [compute(loaded.project, panel.wall, panel.panel) for panel in loaded.panels]
    return tuple(line.item for line in takeoff_of(loaded.project, computed).bought)
