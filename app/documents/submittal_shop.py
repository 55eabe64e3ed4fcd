"""Shop drawings of a submittal: sheets to cut, growth and tape tables of a panel, the saw station of all."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from app.documents.panel_results import PanelResults
from app.documents.submittal_packing import packed
from app.documents.submittal_paper import goes_onto, inner_room, shop_scales
from app.documents.submittal_parts import CUT_SHEETS
from app.drawing.drawing import Drawing
from app.drawing.scales import Scale, SheetSize
from app.drawing.svg import svg_document
from app.drawing.views import saw_station, sheets_to_cut
from app.drawing.views.growth import Warmth, growth_plot
from app.drawing.views.sheets_to_cut import sheets_to_cut_view
from app.liner.drift_words import hook_words
from app.liner.stacks import cut_list
from app.liner.work_values import Stack
from app.order.saw_values import SawList
from app.panel.laying import Laying
from app.panel.project import Project

CUT_SHEETS_NAME, SAW_NAME = "Sheets to cut", "Saw station"


@dataclass(frozen=True, slots=True)
class PlotDrawing:
    """One growth plot: its caption, and its drawing in mm."""

    axis: str
    caption: str
    svg: str
    width: float
    height: float


def shop_drawings(
    results: PanelResults, project: Project, sheet: SheetSize, parts: frozenset[str]
) -> Iterator[tuple[str, Drawing]]:
    """Name and drawing of each shop sheet of one panel that the parts ask for, each as large as goes onto the sheet."""
    if CUT_SHEETS in parts:
        yield from _cut_sheets(results, project, sheet)


def _cut_sheets(results: PanelResults, project: Project, sheet: SheetSize) -> Iterator[tuple[str, Drawing]]:
    """As many stacks on a sheet as go onto it; the title says which sheet of how many."""
    found = cut_list(results.layout, results.plan, results.cutting, project.liner)
    stacks = found.stacks
    pages = list(_pages(results, project, sheet, stacks))
    for k, (scale, page) in enumerate(pages, start=1):
        count = sum(stack.count for stack in stacks)
        title = f"{results.panel.mark}, sheets to cut: {count} of {found.used} to unpack, in {len(stacks)} stacks"
        title += f"; sheet {k} of {len(pages)}" if len(pages) > 1 else ""
        name = CUT_SHEETS_NAME if k == 1 else f"{CUT_SHEETS_NAME}, {k}"
        yield name, _page_of(results, project, sheet, page, scale, title)


def _pages(
    results: PanelResults, project: Project, sheet: SheetSize, stacks: Sequence[Stack]
) -> Iterator[tuple[Scale, Sequence[Stack]]]:
    usual, left = sheets_to_cut.usual_scale(project.length_unit), stacks
    while left or left is stacks:
        scale, taken = _fitting(results, project, sheet, left, usual)
        yield scale, left[:taken]
        if not left[taken:]:
            return
        left = left[taken:]


def _fitting(
    results: PanelResults, project: Project, sheet: SheetSize, left: Sequence[Stack], usual: Scale
) -> tuple[Scale, int]:
    """The most stacks that go onto the sheet at the usual scale; one alone, smaller, where not even that does."""

    def goes(number: int, scale: Scale) -> bool:
        return goes_onto(_page_of(results, project, sheet, left[:number], scale, ""), sheet)

    low, high = 0, len(left)
    while low < high:
        middle = (low + high + 1) // 2
        low, high = (middle, high) if goes(middle, usual) else (low, middle - 1)
    if low or not left:
        return usual, low
    scales = shop_scales(project.length_unit, usual)
    return next((scale for scale in scales if goes(1, scale)), scales[-1]), 1


def _page_of(
    results: PanelResults, project: Project, sheet: SheetSize, stacks: Sequence[Stack], scale: Scale, title: str
) -> Drawing:
    paper = inner_room(sheet)[0] - 2 * sheets_to_cut.SIDE_MM
    unit, liner = project.length_unit, project.liner
    return sheets_to_cut_view(
        results.layout, results.plan, liner, stacks, scale=scale, unit=unit, title=title, paper_mm=paper
    )


def growth_drawings(results: PanelResults, project: Project, width: float) -> tuple[PlotDrawing, ...]:
    """Growth along and up the panel over the day's temperatures, `width` mm wide; none for a panel without brick."""
    day, liner, laying = project.day, project.liner, results.panel.laying
    warmth = Warmth(day.bed_low, day.bed_high, day.bed_high, day.bed_low, day.bed_high, project.temperature_unit)
    unit, drift = project.length_unit, results.drift
    plots = []
    for axis in ("x", "y"):
        if not any(span.axis == axis for span in drift.spans):
            continue
        turned = axis == "x" and laying.corner.endswith("right")
        drawn = growth_plot(drift, axis, liner, warmth, width=width, unit=unit, turned=turned)
        wide, high = drawn.paper
        plots.append(PlotDrawing(axis, _caption(laying, axis), packed(svg_document(drawn, "white")), wide, high))
    return tuple(plots)


def _caption(laying: Laying, axis: str) -> str:
    """Which way the tape runs, seen on the bed."""
    return f"{'Along' if axis == 'x' else 'Up'} the panel: {hook_words(laying, axis)}"


def saw_drawings(saw: SawList, project: Project, sheet: SheetSize) -> tuple[Drawing, ...]:
    """The saw station of all panels together, sheet by sheet; none where nothing is cut."""
    wide, high = inner_room(sheet)
    around = saw_station.AROUND
    page = wide - around.left - around.right, high - around.top - around.bottom
    return saw_station.saw_station(saw, unit=project.length_unit, title=SAW_NAME, page_mm=page)
