"""The table of a panel's things below the drawing: rows sorted and typed into, rows pasted, rows copied out."""

from collections.abc import Iterator
from dataclasses import dataclass

from fastapi import APIRouter
from starlette.responses import HTMLResponse, Response

from app.lengths import LengthError, parse
from app.panel.faults import Fault, Refused
from app.panel.project import Project
from app.panel.table_rows import COLUMNS, written
from app.panel.table_text import write_table
from app.panel.values import Panel
from app.storage import reading
from app.web.database import Database
from app.web.editor_costs import Cost, costs_of
from app.web.editor_show import laid_out
from app.web.editor_view import address_of
from app.web.forms import Form
from app.web.pages import show
from app.web.words import counted
from app.workflow.loading import LoadedPanel, load_panel
from app.workflow.panel_edits import as_edited

router = APIRouter(prefix="/panels/{panel_id}/table", include_in_schema=False)

HEADS = {
    "mark": "Mark",
    "use": "Use or bond",
    "shape": "Shape",
    "x": "Left",
    "y": "Foot",
    "width": "Width",
    "height": "Height",
    "more": "Rise, radius, points",
}
LENGTHS = frozenset({"x", "y", "width", "height"})
SHAPES = {
    "opening": ("rect", "arch", "circle", "polygon"),
    "zone": ("rect", "polygon", "band"),
    "plate": ("rect", "polygon"),
    "strip": ("line",),
    "fixing": ("line",),
}


@dataclass(frozen=True, slots=True)
class Head:
    name: str
    words: str


@dataclass(frozen=True, slots=True)
class Cell:
    """One cell as typed; `order` is what rows are sorted by, a number for lengths; `options` make it a list."""

    name: str
    value: str
    order: str
    options: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class TableRow:
    """One thing by its key, with the kind that it is."""

    key: str
    kind: str
    cells: tuple[Cell, ...]


@dataclass(frozen=True, slots=True)
class TablePart:
    address: str
    revision: int
    heads: tuple[Head, ...]
    rows: tuple[TableRow, ...]


@dataclass(frozen=True, slots=True)
class LookPart:
    """What rows would do: which things they change or add, what that costs, and why they cannot be put in."""

    title: str
    revision: int
    costs: tuple[Cost, ...] = ()
    faults: tuple[Fault, ...] = ()


@router.get("")
def table(panel_id: str, database: Database) -> HTMLResponse:
    """The rows of every opening, zone, plate, strip and fixing line."""
    with reading(database) as session:
        loaded = load_panel(session, panel_id)
    heads = tuple(Head(name, words) for name, words in HEADS.items())
    rows = tuple(_rows(loaded.project, loaded.panel))
    return show("editor_table.html", TablePart(address_of(panel_id), loaded.revision, heads, rows))


@router.get("/copy")
def copy(panel_id: str, database: Database) -> Response:
    """The rows as text with tabs between the cells, for a spreadsheet."""
    with reading(database) as session:
        loaded = load_panel(session, panel_id)
    text = write_table(written(loaded.panel, loaded.project.length_unit))
    return Response(text, media_type="text/tab-separated-values; charset=utf-8", headers={"cache-control": "no-store"})


@router.post("/look")
def look(panel_id: str, form: Form, database: Database) -> HTMLResponse:
    """What pasted rows would change; saves nothing."""
    with reading(database) as session:
        loaded = load_panel(session, panel_id)
    return show("editor_table_look.html", _looked(loaded, form.get("table", "")))


def _looked(loaded: LoadedPanel, table: str) -> LookPart:
    try:
        edited = as_edited(loaded, "put_table", {"table": table})
    except Refused as refused:
        found = counted(len(refused.faults), "fault")
        return LookPart(f"Not possible yet: {found}.", loaded.revision, faults=tuple(refused.faults))
    costs = costs_of(laid_out(loaded).computed, laid_out(edited).computed)
    return LookPart(_differing(loaded.panel, edited.panel), loaded.revision, costs)


def _differing(before: Panel, after: Panel) -> str:
    was, now = _items(before), _items(after)
    added = [key.partition("/")[2] for key in now if key not in was]
    changed = [key.partition("/")[2] for key in now if key in was and was[key] != now[key]]
    parts = (("Changes", changed), ("adds", added))
    said = "; ".join(f"{words} {', '.join(marks)}" for words, marks in parts if marks)
    return f"{said[:1].upper()}{said[1:]}." if said else "Changes nothing."


def _items(panel: Panel) -> dict[str, object]:
    items: dict[str, object] = {f"openings/{one.mark}": one for one in panel.openings}
    items |= {f"zones/{one.mark}": one for one in panel.zones}
    items |= {f"plates/{one.mark}": one for one in panel.plates}
    items |= {f"strips/{one.mark}": one for one in panel.strips}
    return items | {f"fixings/fixing {k + 1}": one for k, one in enumerate(panel.fixings)}


def _rows(project: Project, panel: Panel) -> Iterator[TableRow]:
    for kind, mark, *rest in written(panel, project.length_unit):
        key = f"fixings/{int(mark) - 1}" if kind == "fixing" else f"{kind}s/{mark}"
        cells = dict(zip(COLUMNS[1:], (mark, *rest), strict=True))
        yield TableRow(key, kind, tuple(_cell(kind, name, cells[name], project) for name in HEADS))


def _cell(kind: str, name: str, value: str, project: Project) -> Cell:
    order = _inches(value, project) if name in LENGTHS else value.casefold()
    return Cell(name, value, order, SHAPES[kind] if name == "shape" else ())


def _inches(value: str, project: Project) -> str:
    try:
        return f"{parse(value, 'mm' if project.length_unit == 'mm' else 'in').inches:.6f}"
    except LengthError:
        return ""
