"""What is wrong only with a whole project: a kerf that leaves no brick, a liner sheet that fits on no panel."""

from collections.abc import Mapping
from dataclasses import dataclass
from math import inf

from app.brickwork.own_bonds import known_bonds
from app.documents.bond_use import known_sizes
from app.liner.mould import sheet_steps
from app.panel.faults import Fault
from app.panel.project import Liner, Project
from app.panel.size import BrickSize
from app.panel.values import Panel
from app.panel.wording import quoted, said, said_size

LONG_INCHES = 120.0
"""Sheets up to 10 ft are handled whatever the panel; longer ones only where a panel takes them (common practice)."""


@dataclass(frozen=True, slots=True)
class _OnPanel:
    """A panel, and one sheet of the brick of its field as its liner would be made; inches."""

    panel: Panel
    size: BrickSize
    width: float
    height: float


def project_faults(project: Project) -> tuple[Fault, ...]:
    """Faults at `order.kerf`, `liner.columns`, `liner.rows` and `liner.lap`; nothing for a project without panels."""
    sizes = known_sizes(project)
    panels = [panel for wall in project.walls for panel in wall.panels]
    of_sheets = _sheet_faults(project, panels, sizes) or _lap_faults(project, panels, sizes)
    return (*_kerf_faults(project, panels, sizes), *of_sheets)


def _kerf_faults(project: Project, panels: list[Panel], sizes: Mapping[str, BrickSize]) -> tuple[Fault, ...]:
    works = [work for panel in panels for work in (panel.field, *(zone.work for zone in panel.zones))]
    used = [sizes[name] for name in dict.fromkeys(work.size for work in works)]
    sides = [
        (length, name, size) for size in used for length, name in ((size.height, "height"), (size.length, "length"))
    ]
    kerf, unit = project.order.kerf, project.length_unit
    if not sides:
        return ()
    least, name, size = min(sides, key=lambda side: side[0].nm)
    if kerf.nm < least.nm:
        return ()
    expected = f"less than the face {name} of brick {quoted(size.name)}, {said(least, unit)}, so that brick is left"
    return (Fault("order.kerf", f"a kerf of {said(kerf, unit)}", expected),)


def _sheet_faults(project: Project, panels: list[Panel], sizes: Mapping[str, BrickSize]) -> tuple[Fault, ...]:
    usual, liner = Liner(), project.liner
    if not panels or (liner.columns, liner.rows) == (usual.columns, usual.rows):
        return ()
    placed = [_on_panel(panel, sizes[panel.field.size], liner) for panel in panels]
    if all(one.width > one.panel.width and one.height > one.panel.height for one in placed):
        return (_sheet_fault("columns" if liner.columns != usual.columns else "rows", project, placed),)
    longest = (
        max(LONG_INCHES, *(panel.width for panel in panels)),
        max(LONG_INCHES, *(panel.height for panel in panels)),
    )
    is_long = all(one.width > longest[0] for one in placed), all(one.height > longest[1] for one in placed)
    return tuple(
        _sheet_fault(name, project, placed) for name, long in zip(("columns", "rows"), is_long, strict=True) if long
    )


def _on_panel(panel: Panel, size: BrickSize, liner: Liner) -> _OnPanel:
    return _OnPanel(panel, size, liner.columns * size.head_module, liner.rows * size.gauge)


def _lap_faults(project: Project, panels: list[Panel], sizes: Mapping[str, BrickSize]) -> tuple[Fault, ...]:
    """A flange half as wide as the shorter step from sheet to sheet, or wider, meets the next one."""
    known, lap, unit = known_bonds(project), project.liner.lap, project.length_unit
    works = dict.fromkeys(work for panel in panels for work in (panel.field, *(zone.work for zone in panel.zones)))
    steps = [
        (min(sheet_steps(known[work.bond], sizes[work.size], project.liner.columns, project.liner.rows)), work)
        for work in works
    ]
    least, work = min(steps, key=lambda one: one[0], default=(inf, None))
    if work is None or lap.inches < least / 2:
        return ()
    name = f"{quoted(work.bond)} in {quoted(work.size)}"
    expected = f"less than half of the shorter step from sheet to sheet, {said(least, unit)} for {name}"
    return (Fault("liner.lap", f"a lap of {said(lap, unit)}", expected),)


def _sheet_fault(name: str, project: Project, placed: list[_OnPanel]) -> Fault:
    largest, unit = max(placed, key=lambda one: one.panel.width * one.panel.height), project.length_unit
    sheet = said_size(largest.width, largest.height, unit)
    found = f"{getattr(project.liner, name):,} {name}: a sheet of {sheet} in {quoted(largest.size.name)}"
    size = said_size(largest.panel.width, largest.panel.height, unit)
    return Fault(f"liner.{name}", found, f"sheets that fit on the largest panel, {largest.panel.mark}, {size}")
