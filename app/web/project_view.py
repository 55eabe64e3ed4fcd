"""What the project page shows, made from one project of one moment."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from app.brickwork.bonds import BONDS
from app.documents.project_file import sizes_of
from app.lengths import format_length
from app.order.values import Line
from app.panel.faults import Fault
from app.panel.project import Project
from app.storage.shares import StoredShare
from app.web.pages import Page, Step
from app.web.wall_drawing import WallDrawing, wall_drawing
from app.web.words import at, counted, sized
from app.workflow.compute import Computed, compute, takeoff_of
from app.workflow.loading import LoadedPanel, LoadedProject, LoadedWall
from app.workflow.new_parts import usual


@dataclass(frozen=True, slots=True)
class Typed:
    """A form for a new panel as it was typed, or as it begins."""

    mark: str
    width: str
    height: str
    size: str
    bond: str


@dataclass(frozen=True, slots=True)
class PanelRow:
    """One line of the panel schedule."""

    id: str
    mark: str
    address: str
    bed_address: str
    change_address: str
    size: str
    thickness: str
    base: str
    whole: str
    trimmed: str
    small: str
    sheets: str
    revision: int
    findings: str
    has_findings: bool


@dataclass(frozen=True, slots=True)
class WallPart:
    """One wall: its drawing, its schedule, and the form for a new panel."""

    id: str
    mark: str
    facts: str
    drawing: WallDrawing | None
    rows: tuple[PanelRow, ...]
    new: Typed
    is_typed: bool


@dataclass(frozen=True, slots=True)
class OrderLine:
    item: str
    net: str
    overage: str
    order: str
    unit: str


@dataclass(frozen=True, slots=True)
class Download:
    name: str
    address: str
    words: str
    file_name: str


@dataclass(frozen=True, slots=True)
class ShareRow:
    opens: str
    times: str
    is_open: bool
    state: str
    address: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ProjectPage(Page):
    """A project; `removed` has ids and marks of panels that can be put back, `faults` belong to a refused form."""

    address: str
    name: str
    facts: str
    walls: tuple[WallPart, ...]
    next_wall: str
    sizes: tuple[str, ...]
    bonds: tuple[str, ...] = field(default_factory=lambda: tuple(BONDS))
    how_to_type: str
    order: tuple[OrderLine, ...]
    downloads: tuple[Download, ...]
    shares: tuple[ShareRow, ...]
    removed: tuple[tuple[str, str], ...] = ()
    faults: tuple[Fault, ...] = ()


def page_of(
    loaded: LoadedProject,
    shares: Sequence[StoredShare],
    faults: tuple[Fault, ...] = (),
    typed: Mapping[str, Typed] | None = None,
) -> ProjectPage:
    """The page; `typed` is a refused form by its wall's id."""
    project, address = loaded.project, f"/projects/{loaded.id}"
    computed = {panel.id: compute(project, panel.wall, panel.panel) for panel in loaded.panels}
    lines = takeoff_of(project, tuple(computed.values())).lines
    return ProjectPage(
        title=project.name,
        path=(Step("Projects", "/"), Step(project.name)),
        address=address,
        name=project.name,
        facts=_facts(loaded),
        walls=tuple(_wall(loaded, wall, computed, (typed or {}).get(wall.id)) for wall in loaded.walls),
        next_wall=_next_wall(project),
        sizes=tuple(sizes_of(project)),
        how_to_type=HOW_TO_TYPE[project.length_unit],
        order=tuple(map(_order_line, lines)),
        downloads=_downloads(loaded.id, project.name),
        shares=tuple(_share(share, address, loaded) for share in shares),
        faults=faults,
    )


HOW_TO_TYPE = {
    "in": "Type lengths as 12'-6 3/8\", 12-6 3/8, 150 (inches) or 3810 mm.",
    "mm": "Type lengths as 3810 (millimetres), 3.81 m, 381 cm or 12'-6\".",
}


def _facts(loaded: LoadedProject) -> str:
    unit = {"in": "feet and inches", "mm": "millimetres"}[loaded.project.length_unit]
    return f"{counted(len(loaded.walls), 'wall')}, {counted(len(loaded.panels), 'panel')}. Lengths in {unit}."


def _wall(loaded: LoadedProject, wall: LoadedWall, computed: Mapping[str, Computed], typed: Typed | None) -> WallPart:
    unit = loaded.project.length_unit
    rows = tuple(_row(loaded, panel, computed[panel.id]) for panel in wall.panels)
    joint = f", joints {format_length(wall.wall.joint, unit)}" if len(rows) > 1 else ""
    return WallPart(
        id=wall.id,
        mark=wall.wall.mark,
        facts=f"{counted(len(rows), 'panel')}{joint}",
        drawing=wall_drawing(wall, computed, unit) if rows else None,
        rows=rows,
        new=typed or _begun(loaded, wall),
        is_typed=typed is not None,
    )


def _row(loaded: LoadedProject, panel: LoadedPanel, computed: Computed) -> PanelRow:
    unit, value, layout = loaded.project.length_unit, panel.panel, computed.layout
    return PanelRow(
        id=panel.id,
        mark=value.mark,
        address=f"/panels/{panel.id}",
        bed_address=f"/bed/{panel.id}",
        change_address=f"/projects/{loaded.id}/panels/{panel.id}",
        size=sized(value.width, value.height, unit),
        thickness=format_length(value.thickness, unit),
        base=format_length(value.base, unit),
        whole=f"{layout.whole:,}",
        trimmed=f"{len(layout.trims):,}",
        small=f"{layout.small:,}",
        sheets=f"{computed.plan.used:,}",
        revision=panel.revision,
        findings=counted(len(computed.findings), "finding") if computed.findings else "none",
        has_findings=bool(computed.findings),
    )


def _begun(loaded: LoadedProject, wall: LoadedWall) -> Typed:
    """The form for a new panel as it begins: the next mark, the size and brick of the panel before it."""
    unit = loaded.project.length_unit
    marks = {panel.panel.mark for panel in loaded.panels}
    mark = next(mark for number in range(1, 10_000) if (mark := f"{wall.wall.mark[:1]}{number}") not in marks)
    if not wall.panels:
        return Typed(mark, "", "", usual(unit).size, "running")
    last = wall.panels[-1].panel
    return Typed(mark, "", "", last.field.size, last.field.bond)


def _next_wall(project: Project) -> str:
    marks = {wall.mark for wall in project.walls}
    return next((mark for mark in "ABCDEFGHIJKLMNOPQRSTUVWXYZ" if mark not in marks), "")


def _order_line(line: Line) -> OrderLine:
    item = f"{line.item}, {line.size}" if line.size and line.size not in line.item else line.item
    return OrderLine(item, _amount(line.net), _amount(line.overage), _amount(line.order), line.unit)


def _amount(value: float) -> str:
    return f"{value:,.0f}" if value == int(value) else f"{value:,.1f}"


def _downloads(project_id: str, name: str) -> tuple[Download, ...]:
    api = f"/api/projects/{project_id}"
    words = "PDF for approval: drawings, schedules, checkpoints, order"
    return (
        Download("Submittal", f"{api}/submittal.pdf", words, f"{name}, submittal.pdf"),
        Download("Order as a workbook", f"{api}/takeoff.xlsx", "for a spreadsheet", f"{name}, order.xlsx"),
        Download("Order as a list", f"{api}/takeoff.csv", "comma-separated text", f"{name}, order.csv"),
        Download("Project file", f"{api}/file", "everything in this project, to keep or pass on", f"{name}.json"),
    )


def _share(share: StoredShare, address: str, loaded: LoadedProject) -> ShareRow:
    marks = {panel.id: f"panel {panel.panel.mark}" for panel in loaded.panels}
    opens = marks.get(share.panel_id, "a panel that was removed") if share.panel_id else "every panel"
    used = f"last used {at(share.last_used_at)}" if share.last_used_at else "not used yet"
    state = f"revoked {at(share.revoked_at)}" if share.revoked_at else ""
    times = f"made {at(share.created_at)}, {used}"
    return ShareRow(opens, times, share.revoked_at is None, state, f"{address}/shares/{share.id}")
