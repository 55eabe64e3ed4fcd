"""What the project page shows, made from one project of one moment."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import datetime

from app.brickwork.bonds import BONDS
from app.documents.project_file import sizes_of
from app.lengths import format_length
from app.panel.faults import Fault
from app.panel.project import Project, Wall
from app.storage.projects import StoredWall
from app.storage.shares import StoredShare
from app.web.page_links import PageLink, project_links
from app.web.pages import Page, Step
from app.web.project_downloads import Download, downloads
from app.web.project_laid import ALL_ALONE, FOLLOWS, computed_of, drawn
from app.web.project_schedule import PanelRow, casting_words, panel_row
from app.web.wall_drawing import WallDrawing, box_of
from app.web.wall_form import Changed, ChangedPart, WallForm, changed_part, form_of
from app.web.words import at, counted, listed
from app.workflow.compute import Computed
from app.workflow.loading import LoadedProject, LoadedWall
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
class WallPart:
    """One wall: its drawing, its schedule, and the form for a new panel.

    In a large project the drawing and the counts follow from the address `follows`; until then `box` keeps their room.
    """

    id: str
    mark: str
    facts: str
    drawing: WallDrawing | None
    pole_words: str
    form: WallForm
    changed: ChangedPart | None
    casting: str
    rows: tuple[PanelRow, ...]
    new: Typed
    is_typed: bool
    box: str = ""
    follows: str = ""


@dataclass(frozen=True, slots=True)
class ShareRow:
    opens: str
    times: str
    is_open: bool
    state: str
    address: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ProjectPage(Page):
    """A project; `removed` has ids and marks of panels that can be put back, `faults` belong to a refused form.

    `notice` says why a change was not made though nothing was wrong with it.
    """

    address: str
    revision: int
    unit: str
    name: str
    facts: str
    links: tuple[PageLink, ...]
    walls: tuple[WallPart, ...]
    next_wall: str
    sizes: tuple[str, ...]
    bonds: tuple[str, ...] = field(default_factory=lambda: tuple(BONDS))
    how_to_type: str
    downloads: tuple[Download, ...]
    shares: tuple[ShareRow, ...]
    removed: tuple[tuple[str, str], ...] = ()
    faults: tuple[Fault, ...] = ()
    notice: str = ""


@dataclass(frozen=True, slots=True)
class Asked:
    """What belongs to one answer alone: faults of a refused form, refused new panels by their wall's id, a change."""

    faults: tuple[Fault, ...] = ()
    typed: Mapping[str, Typed] = field(default_factory=dict)
    changed: Changed | None = None
    notice: str = ""


def page_of(
    loaded: LoadedProject,
    stored: Sequence[StoredWall],
    shares: Sequence[StoredShare],
    asked: Asked,
    now: datetime,
) -> ProjectPage:
    """The page; `stored` are the walls as rows, in the order of the project's."""
    project, address = loaded.project, f"/projects/{loaded.id}"
    computed = computed_of(loaded, loaded.panels if len(loaded.panels) <= AT_ONCE else ())
    return ProjectPage(
        title=project.name,
        path=(Step("Projects", "/"), Step(project.name)),
        address=address,
        name=project.name,
        facts=_facts(loaded),
        links=project_links(address, *PAGES),
        revision=loaded.revision,
        unit=project.length_unit,
        walls=tuple(_wall(loaded, wall, row, computed, asked) for wall, row in zip(loaded.walls, stored, strict=True)),
        next_wall=_next_wall(project),
        sizes=tuple(sizes_of(project)),
        how_to_type=HOW_TO_TYPE[project.length_unit],
        downloads=downloads(loaded.id, project.name),
        shares=tuple(_share(share, address, loaded, now) for share in shares),
        faults=asked.faults,
        notice=asked.notice,
    )


AT_ONCE = 16
"""A project of more panels shows its page first and then each wall as it comes into view: laying all of them out takes
longer than one waits for a page."""

PAGES = (
    ("Order", "order?of=project"),
    ("Saw list", "saw?of=project"),
    ("Submittal", "submittal"),
    ("Releases", "releases"),
    ("At the bed", "at-bed"),
    ("Settings", "settings"),
)

HOW_TO_TYPE = {
    "in": "Type lengths as 12'-6 3/8\", 12-6 3/8, 150 (inches) or 3810 mm.",
    "mm": "Type lengths as 3810 (millimetres), 3.81 m, 381 cm or 12'-6\".",
}


def _facts(loaded: LoadedProject) -> str:
    unit = {"in": "feet and inches", "mm": "millimetres"}[loaded.project.length_unit]
    return f"{counted(len(loaded.walls), 'wall')}, {counted(len(loaded.panels), 'panel')}. Lengths in {unit}."


def _wall(
    loaded: LoadedProject, wall: LoadedWall, stored: StoredWall, computed: Mapping[str, Computed], asked: Asked
) -> WallPart:
    unit, typed = loaded.project.length_unit, asked.typed.get(wall.id)
    rows = tuple(panel_row(loaded.id, panel, computed.get(panel.id)) for panel in wall.panels)
    follows = bool(rows) and wall.panels[0].id not in computed
    drawing, words = drawn(wall, computed, unit) if rows and not follows else (None, FOLLOWS if follows else ALL_ALONE)
    return WallPart(
        id=wall.id,
        mark=wall.wall.mark,
        facts=_wall_facts(wall.wall, unit),
        drawing=drawing,
        pole_words=words,
        form=form_of(stored, unit),
        changed=_changed(loaded, wall, asked.changed),
        casting=casting_words(wall.wall.panels),
        rows=rows,
        new=typed or _begun(loaded, wall),
        is_typed=typed is not None,
        box=box_of(wall) if follows else "",
        follows=f"/projects/{loaded.id}/walls/{wall.id}" if follows else "",
    )


def _wall_facts(wall: Wall, unit: str) -> str:
    facts = [counted(len(wall.panels), "panel")]
    if len(wall.panels) > 1:
        facts.append(f"joints {format_length(wall.joint, unit)}")
    if wall.panels:
        facts.append(f"datum {format_length(wall.datum, unit)}")
    released = [panel.mark for panel in wall.panels if panel.released]
    return ", ".join(facts) + (f"; released: {listed(released)}" if released else "")


def _changed(loaded: LoadedProject, wall: LoadedWall, changed: Changed | None) -> ChangedPart | None:
    """Only while nothing else has changed since."""
    if changed is None or (changed.wall_id, changed.revision) != (wall.id, loaded.revision):
        return None
    return changed_part(changed, wall.wall, loaded.project.length_unit)


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


def _share(share: StoredShare, address: str, loaded: LoadedProject, now: datetime) -> ShareRow:
    marks = {panel.id: f"panel {panel.panel.mark}" for panel in loaded.panels}
    opens = marks.get(share.panel_id, "a panel that was removed") if share.panel_id else "every panel"
    used = f"last used {at(share.last_used_at)}" if share.last_used_at else "not used yet"
    state = f"revoked {at(share.revoked_at)}" if share.revoked_at else ""
    is_over = share.expires_at is not None and share.expires_at <= now
    ends = f", {'ended' if is_over else 'ends'} {at(share.expires_at)}" if share.expires_at else ""
    may = "to look and record" if share.rights == "record" else "to look"
    times = f"{may}, made {at(share.created_at)}, {used}{ends}"
    is_open = share.revoked_at is None and not is_over
    return ShareRow(opens, times, is_open, state or ("ended" if is_over else ""), f"{address}/shares/{share.id}")
