"""What the Releases pages show: the panels of a project, the releases of a panel, one release."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from app.documents.accepted import acceptance_of
from app.documents.digest import ENGINE, panel_digest
from app.drawing.scales import Scale
from app.drawing.views.compare import AROUND, compare
from app.panel.faults import Fault
from app.storage.releases import StoredNotice, StoredRelease
from app.web.inline_drawing import InlineDrawing, inline_drawing
from app.web.page_links import panel_path, project_path
from app.web.pages import Page, Step
from app.web.words import at, counted
from app.workflow.compute import Computed, compute
from app.workflow.loading import LoadedPanel, LoadedProject
from app.workflow.release_differences import Differences
from app.workflow.releasing import blocking

PAPER_MM = (235.0, 165.0)

AT_ONCE = 16
"""Panels of a project up to which open errors are looked for before anything is released."""

FILE_NAMES = {
    "inputs.json": "Inputs, as a project file",
    "results.json": "Results, every number",
    "bed.json": "What the bed page shows",
    "elevation.svg": "Elevation",
    "bed.svg": "Bed view",
    "sheets.svg": "Liner sheets",
    "returns.svg": "Returns",
    "colours.svg": "Colours of the brick",
    "story-pole.svg": "Story pole",
}


@dataclass(frozen=True, slots=True)
class State:
    """How a panel stands against its last release; `is_right` when there is nothing to do."""

    words: str
    is_right: bool


@dataclass(frozen=True, slots=True)
class ReleaseRow:
    """One release of a panel."""

    letter: str
    address: str
    told: str
    why: str
    state: State
    digest: str


@dataclass(frozen=True, slots=True)
class PanelLine:
    """One panel of a project, and whether it is chosen to be released."""

    id: str
    mark: str
    address: str
    state: State
    told: str
    blocked: tuple[str, ...]
    is_chosen: bool


@dataclass(frozen=True, slots=True)
class WallLines:
    mark: str
    panels: tuple[PanelLine, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ProjectReleases(Page):
    address: str
    walls: tuple[WallLines, ...]
    why: str = ""
    faults: tuple[Fault, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class PanelReleases(Page):
    """The releases of one panel, newest first, and what stands in the way of the next."""

    mark: str
    address: str
    state: State
    blocked: tuple[str, ...]
    accepted: tuple[str, ...]
    rows: tuple[ReleaseRow, ...]
    next_letter: str
    hold: str
    holds_of: str
    why: str = ""
    faults: tuple[Fault, ...] = ()


@dataclass(frozen=True, slots=True)
class Download:
    name: str
    address: str
    file_name: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ReleasePage(Page):
    """One release: what it is, whether it is whole, what it changed, what it holds."""

    mark: str
    letter: str
    back: str
    bed: str
    told: str
    why: str
    state: State
    digest: str
    engine: str
    damaged: tuple[str, ...]
    notices: tuple[str, ...]
    earlier: str
    differences: tuple[str, ...]
    drawing: InlineDrawing | None
    accepted: tuple[str, ...]
    open_findings: int
    downloads: tuple[Download, ...]


@dataclass(frozen=True, slots=True)
class Outcome:
    """What became of one panel of a batch."""

    mark: str
    words: str
    address: str
    is_right: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class ReleasesMaking(Page):
    address: str
    now: str
    done: int
    steps: int
    words: str
    trouble: str
    outcomes: tuple[Outcome, ...] = field(default_factory=tuple)


def releases_address(panel_id: str) -> str:
    return f"/panels/{panel_id}/releases"


def state_of(loaded: LoadedPanel, last: StoredRelease | None) -> State:
    """The panel as drawn against its last release."""
    if last is None:
        return State("not released yet", False)
    if last.hold:
        return State(f"rev {last.letter} on hold: {last.hold.why}", False)
    is_same = panel_digest(loaded.project, loaded.wall, loaded.panel) == last.head.inputs_digest
    if is_same and last.head.engine == ENGINE:
        return State(f"rev {last.letter}, as drawn", True)
    return State(f"changed since rev {last.letter}", False)


def project_releases(
    loaded: LoadedProject, newest: Mapping[str, StoredRelease], why: str = "", faults: Sequence[Fault] = ()
) -> ProjectReleases:
    """Every panel; those that have something new are chosen.

    Of a large project only what a release would say is not looked for beforehand: all its brick would be laid out.
    """
    is_looked_at = len(loaded.panels) <= AT_ONCE
    address = f"/projects/{loaded.id}/releases"
    return ProjectReleases(
        title=f"Releases, {loaded.project.name}",
        path=project_path(loaded.id, loaded.project.name, "Releases"),
        address=address,
        walls=tuple(
            WallLines(wall.wall.mark, tuple(_line(panel, newest.get(panel.id), is_looked_at) for panel in wall.panels))
            for wall in loaded.walls
            if wall.panels
        ),
        why=why,
        faults=tuple(faults),
    )


def panel_releases(
    loaded: LoadedPanel, rows: Sequence[StoredRelease], next_letter: str, why: str = "", faults: Sequence[Fault] = ()
) -> PanelReleases:
    last, done = (rows[0] if rows else None), compute(loaded.project, loaded.wall, loaded.panel)
    return PanelReleases(
        title=f"Releases of {loaded.panel.mark}",
        path=panel_path(loaded, "Releases"),
        mark=loaded.panel.mark,
        address=releases_address(loaded.id),
        state=state_of(loaded, last),
        blocked=tuple(finding.text for finding in blocking(done.findings, loaded.panel)),
        accepted=_accepted(done),
        rows=tuple(_row(row) for row in rows),
        next_letter=next_letter,
        hold=f"{releases_address(loaded.id)}/{last.id}/notice" if last else "",
        holds_of=("go on" if last.hold else "hold") if last else "",
        why=why,
        faults=tuple(faults),
    )


def release_page(
    loaded: LoadedPanel,
    row: StoredRelease,
    earlier: StoredRelease | None,
    found: Differences,
    damaged: tuple[str, ...],
) -> ReleasePage:
    back, letter = releases_address(loaded.id), row.letter
    accepted = _accepted(found.later)
    return ReleasePage(
        title=f"{row.head.mark}, rev {letter}",
        path=panel_path(loaded, Step("Releases", back), f"Rev {letter}"),
        mark=row.head.mark,
        letter=letter,
        back=back,
        bed=f"/bed/{loaded.id}?rev={letter}",
        told=_told(row),
        why=row.head.why,
        state=_row_state(row),
        digest=row.digest,
        engine=row.head.engine,
        damaged=damaged,
        notices=tuple(f"{notice.kind.capitalize()}, {_by(notice)}: {notice.why}" for notice in row.notices),
        earlier=earlier.letter if earlier else "",
        differences=found.words,
        drawing=_drawing(found, letter, earlier),
        accepted=accepted,
        open_findings=len(found.later.findings) - len(accepted),
        downloads=tuple(_download(row, name) for name in row.head.parts),
    )


def _line(panel: LoadedPanel, last: StoredRelease | None, is_looked_at: bool) -> PanelLine:
    state = state_of(panel, last)
    found = compute(panel.project, panel.wall, panel.panel).findings if is_looked_at else ()
    blocked = tuple(finding.text for finding in blocking(found, panel.panel))
    told = _told(last) if last else ""
    is_chosen = not state.is_right and not blocked
    return PanelLine(panel.id, panel.panel.mark, releases_address(panel.id), state, told, blocked, is_chosen)


def _row(row: StoredRelease) -> ReleaseRow:
    address = f"{releases_address(row.panel_id)}/{row.id}"
    return ReleaseRow(row.letter, address, _told(row), row.head.why, _row_state(row), row.digest[7:19])


def _row_state(row: StoredRelease) -> State:
    if not row.is_newest:
        return State("superseded", True)
    return State(f"on hold: {row.hold.why}", False) if row.hold else State("in force", True)


def _told(row: StoredRelease) -> str:
    return f"{at(row.at)}, by {row.head.person}, from revision {row.head.revision}"


def _by(notice: StoredNotice) -> str:
    return f"{at(notice.at)} by {notice.person}"


def _accepted(done: Computed) -> tuple[str, ...]:
    held = [(finding, acceptance_of(finding, done.given.panel.accepted)) for finding in done.findings]
    return tuple(f"{finding.text} Accepted by {one.by}: {one.reason}" for finding, one in held if one)


def _download(row: StoredRelease, name: str) -> Download:
    address = f"{releases_address(row.panel_id)}/{row.id}/{name}"
    return Download(FILE_NAMES.get(name, name), address, f"{row.head.mark} rev {row.letter} {name}")


def _drawing(found: Differences, letter: str, earlier: StoredRelease | None) -> InlineDrawing | None:
    if found.earlier is None or earlier is None:
        return None
    panel = found.later.layout.panel
    room = (PAPER_MM[0] - AROUND.left - AROUND.right, PAPER_MM[1] - AROUND.bottom - AROUND.top)
    scale = Scale(max(panel.width * 25.4 / room[0], panel.height * 25.4 / room[1]), "to fit")
    drawn = compare(found.earlier.layout, found.later.layout, scale=scale, unit=found.later.unit, delta=letter)
    return inline_drawing(drawn, f"Panel {panel.mark}: clouds around all that differs from rev {earlier.letter}")


def batch_words(done: int, steps: int) -> str:
    return f"{done} of {counted(steps, 'panel')} released." if steps else "Waiting for its turn."
