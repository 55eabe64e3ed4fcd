"""A panel copied, and its settings given to others of the project: looked at first, then done as one step on each."""

from collections.abc import Sequence
from dataclasses import dataclass

from fastapi import APIRouter
from starlette.responses import HTMLResponse, Response

from app.panel.faults import Fault, Refused
from app.storage import reading, writing
from app.storage.errors import MarkTaken
from app.web.database import Database, Now
from app.web.editor_costs import Cost, costs_of
from app.web.editor_show import laid_out
from app.web.editor_view import address_of
from app.web.forms import Form, Lists, named, then
from app.web.hints import Told
from app.web.page_links import panel_path
from app.web.pages import Page, show
from app.web.person import Person
from app.web.words import counted
from app.workflow.compute import compute
from app.workflow.loading import LoadedPanel, LoadedProject, checking, load_panel, load_project, wall_of
from app.workflow.opening import Connections
from app.workflow.projects import add_panel
from app.workflow.same_panels import SETTINGS, Given, give, given, label_of

router = APIRouter(prefix="/panels/{panel_id}/same", include_in_schema=False)


@dataclass(frozen=True, slots=True)
class Tick:
    name: str
    words: str
    ticked: bool = False


@dataclass(frozen=True, slots=True)
class WallTicks:
    id: str
    mark: str
    panels: tuple[Tick, ...]


@dataclass(frozen=True, slots=True)
class Change:
    """One panel of the preview."""

    mark: str
    differences: tuple[str, ...]
    costs: tuple[Cost, ...]
    why_not: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SamePage(Page):
    """The form, and what it would change once it has been looked at; `title_now` says how many."""

    mark: str
    address: str
    settings: tuple[Tick, ...]
    walls: tuple[WallTicks, ...]
    title_now: str = ""
    changes: tuple[Change, ...] = ()
    faults: tuple[Fault, ...] = ()


@router.get("")
def same(panel_id: str, database: Database) -> HTMLResponse:
    """What can be given, and to which panels."""
    loaded, project = _read(database, panel_id)
    return show("same.html", _page(loaded, project, (), ()))


@router.post("")
def act(panel_id: str, form: Lists, database: Database, now: Now, person: Person, hints: Told) -> Response:
    """Looks at what would change, or with `act` = give changes it."""
    settings, panels = form.get("setting", ()), frozenset(form.get("panel", ()))
    is_meant = form.get("act") == ("give",)
    loaded, project = _read(database, panel_id)
    others = tuple(one for one in project.panels if one.id in panels and one.id != panel_id)
    each = tuple(given(loaded, others, settings))
    if not is_meant or not each:
        return show("same.html", _page(loaded, project, settings, each))
    saved: dict[str, int] = {}
    with writing(database) as session:
        give(session, each, label_of(loaded, settings), person, now)
        for one in others:
            after = load_panel(session, one.id)
            compute(after.project, after.wall, after.panel)
            saved[one.id] = after.revision
    for panel, revision in saved.items():
        hints.tell(panel, revision)
    return then(f"/projects/{loaded.project_id}")


@router.post("/copy")
def copy(panel_id: str, database: Database, form: Form, now: Now) -> Response:
    """The same panel once more under another mark, in a wall of the project; its editor opens."""
    loaded, project = _read(database, panel_id)
    try:
        mark = named(form, "mark", "a mark")
        document = {**loaded.document, "mark": mark}
        for own in ("accepted", "questions", "placed"):
            document.pop(own, None)
        with writing(database) as session:
            wall = wall_of(session, loaded.project_id, form.get("wall", "") or loaded.wall_id)
            checking(session, loaded.project_id)(document)
            made = add_panel(session, wall.id, document, now)
    except Refused as refused:
        return show("same.html", _page(loaded, project, (), (), tuple(refused.faults)), 422)
    except MarkTaken as taken:
        fault = Fault("mark", str(taken), "a mark that no other panel of the project has")
        return show("same.html", _page(loaded, project, (), (), (fault,)), 422)
    return then(address_of(made.id))


def _read(database: Connections, panel_id: str) -> tuple[LoadedPanel, LoadedProject]:
    with reading(database) as session:
        loaded = load_panel(session, panel_id)
        return loaded, load_project(session, loaded.project_id)


def _page(
    loaded: LoadedPanel,
    project: LoadedProject,
    settings: Sequence[str],
    each: Sequence[Given],
    faults: tuple[Fault, ...] = (),
) -> SamePage:
    chosen = {one.before.id for one in each}
    walls = tuple(
        WallTicks(
            wall.id,
            wall.wall.mark,
            tuple(Tick(one.id, one.panel.mark, one.id in chosen) for one in wall.panels if one.id != loaded.id),
        )
        for wall in project.walls
    )
    possible = sum(one.after is not None and bool(one.differences) for one in each)
    return SamePage(
        title=f"Same as {loaded.panel.mark}",
        path=panel_path(loaded, "Same on others"),
        mark=loaded.panel.mark,
        address=address_of(loaded.id),
        settings=tuple(Tick(name, words, name in settings) for name, (words, _) in SETTINGS.items()),
        walls=walls,
        title_now=f"{counted(possible, 'panel')} would change." if each else "",
        changes=tuple(map(_change, each)),
        faults=faults,
    )


def _change(one: Given) -> Change:
    if one.after is None or not one.differences:
        return Change(one.before.panel.mark, (), (), one.why_not or "as it is already")
    before, after = laid_out(one.before).computed, laid_out(one.after).computed
    return Change(one.before.panel.mark, one.differences, costs_of(before, after), "")
