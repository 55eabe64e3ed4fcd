"""The panel schedule of a wall: one line a panel, with its pages and its casting day."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from app.brickwork.wall import is_continuous
from app.documents.accepted import open_findings
from app.lengths import format_length
from app.panel.values import Panel
from app.web.page_links import PageLink, panel_links
from app.web.words import counted, sized
from app.workflow.compute import Computed
from app.workflow.loading import LoadedPanel


@dataclass(frozen=True, slots=True)
class PanelRow:
    """One line of the panel schedule."""

    id: str
    mark: str
    address: str
    change_address: str
    size: str
    depth: str
    courses_from: str
    revision: int
    cast_on: str
    is_placed: bool
    links: tuple[PageLink, ...]
    whole: str = ""
    trimmed: str = ""
    small: str = ""
    sheets: str = ""
    findings: str = ""
    has_findings: bool = False
    accepted: str = ""


def panel_row(project_id: str, panel: LoadedPanel, computed: Computed | None) -> PanelRow:
    """The line of one panel; without its results what rests on them is blank, and follows."""
    unit, value = panel.project.length_unit, panel.panel
    row = PanelRow(
        id=panel.id,
        mark=value.mark,
        address=f"/panels/{panel.id}",
        change_address=f"/projects/{project_id}/panels/{panel.id}",
        size=sized(value.width, value.height, unit),
        depth=f"{format_length(value.thickness, unit)} thick, base {format_length(value.base, unit)}",
        courses_from="released" if value.released else "the wall" if is_continuous(value) else "own origin",
        revision=panel.revision,
        cast_on=value.cast_on or "",
        is_placed=value.placed,
        links=panel_links(panel.id, value.mark, "Panel"),
    )
    return _counted(row, value, computed) if computed else row


def _counted(row: PanelRow, value: Panel, computed: Computed) -> PanelRow:
    layout, still = computed.layout, open_findings(computed.findings, value.accepted)
    return replace(
        row,
        whole=f"{layout.whole:,}",
        trimmed=f"{len(layout.trims):,}",
        small=f"{layout.small:,}",
        sheets=f"{computed.cutting.used:,}",
        findings=counted(len(still), "finding") if still else "none",
        has_findings=bool(still),
        accepted=f"{len(computed.findings) - len(still):,} accepted" if len(still) < len(computed.findings) else "",
    )


def casting_words(panels: Sequence[Panel]) -> str:
    """How many panels of a wall have their day, and how many have their brick placed; nothing for no panels."""
    if not panels:
        return ""
    dated, placed = sum(panel.cast_on is not None for panel in panels), sum(panel.placed for panel in panels)
    return f"{dated} of {len(panels)} with a casting day, {placed} placed"
