"""What goes out of a project: its submittal, and its panels' drawings as files."""

import re
from collections.abc import Callable, Iterator, Mapping
from datetime import date

from app.brickwork.returns import returns
from app.documents.digest import panel_digest
from app.documents.panel_results import Issue, PanelResults
from app.documents.submittal import Progress, submittal_pdf
from app.documents.submittal_parts import APPROVAL
from app.drawing.drawing import Drawing
from app.drawing.scales import QUARTER_INCH, Scale
from app.drawing.svg import svg_document
from app.drawing.views.bed import bed
from app.drawing.views.elevation import COLOURED, elevation
from app.drawing.views.returns import returns_view
from app.drawing.views.sheets import sheet_view
from app.drawing.views.story_pole import story_pole
from app.panel.project import Project, Wall
from app.panel.values import Panel
from app.workflow.compute import Computed, compute
from app.workflow.loading import LoadedPanel, LoadedProject

View = Callable[[Computed, Scale, str], Drawing]

VIEWS: Mapping[str, View] = {
    "elevation": lambda of, scale, unit: elevation(of.layout, plan=of.plan, drift=of.drift, scale=scale, unit=unit),
    "bed": lambda of, scale, unit: bed(of.layout, plan=of.plan, drift=of.drift, scale=scale, unit=unit),
    "sheets": lambda of, scale, unit: sheet_view(
        of.layout, of.plan, drift=of.drift, work=of.sheet_work, scale=scale, unit=unit
    ),
    "returns": lambda of, scale, unit: returns_view(of.layout, scale=scale, unit=unit),
    "colours": lambda of, scale, unit: _coloured(of, scale, unit),
    "story-pole": lambda of, scale, unit: story_pole(of.layout, scale=scale, unit=unit),
}


def _coloured(of: Computed, scale: Scale, unit: str) -> Drawing:
    """The face in the colours of the project's blend."""
    title = f"{of.given.panel.mark}, colours of the brick"
    return elevation(
        of.layout, plan=of.plan, scale=scale, unit=unit, title=title, layers=COLOURED, blend=of.given.blend
    )


USUAL_SHEET = {"in": "ANSI B", "mm": "A3"}


def panel_results(loaded: LoadedPanel) -> PanelResults:
    """One panel with everything computed for it, as documents take it."""
    done = compute(loaded.project, loaded.wall, loaded.panel)
    return PanelResults(
        wall=loaded.wall,
        panel=loaded.panel,
        layout=done.layout,
        plan=done.plan,
        cutting=done.cutting,
        drift=done.drift,
        takeoff=done.takeoff,
        findings=done.findings,
        revision=str(loaded.revision),
        digest=panel_digest(loaded.project, loaded.wall, loaded.panel),
    )


def revision_of(loaded: LoadedProject) -> str:
    """The project's revision and, after a point, how often its panels were saved: no two states have the same."""
    return f"{loaded.revision}.{sum(panel.revision for panel in loaded.panels)}"


def submittal_of(
    loaded: LoadedProject,
    day: date,
    sheet: str = "",
    parts: frozenset[str] = APPROVAL,
    progress: Progress | None = None,
) -> bytes:
    """The submittal of a whole project as a PDF, issued on `day`; "" is the usual sheet for the project's unit.

    `progress` hears (steps done, steps). Raises NoScaleFits for a panel that is too large for the sheet at any scale,
    KeyError for an unknown sheet.
    """
    results = tuple(map(panel_results, loaded.panels))
    issue, size = Issue(day, revision=revision_of(loaded)), sheet or USUAL_SHEET[loaded.project.length_unit]
    return submittal_pdf(loaded.project, results, issue, sheet=size, parts=parts, progress=progress)


def drawing_files(loaded: LoadedProject, scale: Scale = QUARTER_INCH) -> dict[str, str]:
    """Every view of every panel as SVG, by file name: `N1-elevation.svg`; names differ even where marks look alike."""
    return {
        f"{name}-{view}.svg": svg
        for name, panel in zip(_file_names(loaded), loaded.panels, strict=True)
        for view, svg in panel_drawings(panel.project, panel.wall, panel.panel, scale)
    }


def panel_drawings(
    project: Project, wall: Wall, panel: Panel, scale: Scale = QUARTER_INCH
) -> Iterator[tuple[str, str]]:
    """Every view of a panel that has something to show, by name, as SVG."""
    done = compute(project, wall, panel)
    for name, draw in VIEWS.items():
        if (name == "returns" and not returns(done.layout)) or (
            name == "colours" and len(done.given.blend.colours) < 2
        ):
            continue
        yield name, svg_document(draw(done, scale, project.length_unit), "print")


def _file_names(loaded: LoadedProject) -> list[str]:
    """Marks without the signs that a file name cannot hold; a number behind one that another panel has already."""
    names: dict[str, None] = {}
    for panel in loaded.panels:
        plain = re.sub(r"[^\w.-]+", "_", panel.panel.mark).strip("._") or "panel"
        counted = (plain if count == 1 else f"{plain}_{count}" for count in range(1, len(loaded.panels) + 1))
        taken = {name.lower() for name in names}
        names[next(name for name in counted if name.lower() not in taken)] = None
    return list(names)
