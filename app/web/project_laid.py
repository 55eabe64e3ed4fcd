"""The walls of a large project, one by one: their drawings, and after them their counts."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from app.web.project_schedule import PanelRow, panel_row
from app.web.wall_drawing import WallDrawing, wall_drawing
from app.workflow.compute import Computed, compute
from app.workflow.loading import LoadedPanel, LoadedProject, LoadedWall

POLE_WORDS = "Drag the pole at the left to move the datum and with it all courses that come from the wall."
FOLLOWS = "The brick of this wall is being laid out."
ALL_ALONE = "No panel takes its courses from the wall: its datum moves none."


@dataclass(frozen=True, slots=True)
class WallLaid:
    """The drawing of one wall alone."""

    unit: str
    id: str
    drawing: WallDrawing
    pole_words: str


@dataclass(frozen=True, slots=True)
class ScheduleWall:
    mark: str
    rows: tuple[PanelRow, ...]


@dataclass(frozen=True, slots=True)
class WallSchedule:
    """The panel schedule of one wall alone."""

    wall: ScheduleWall


def laid_of(loaded: LoadedProject, wall: LoadedWall) -> WallLaid:
    """One wall of a large project with its brick laid out; its counts follow, as they take longer."""
    unit = loaded.project.length_unit
    return WallLaid(unit, wall.id, *drawn(wall, computed_of(loaded, wall.panels), unit))


def schedule_of(loaded: LoadedProject, wall: LoadedWall) -> WallSchedule:
    """The counts of one wall of a large project."""
    computed = computed_of(loaded, wall.panels)
    rows = tuple(panel_row(loaded.id, panel, computed[panel.id]) for panel in wall.panels)
    return WallSchedule(ScheduleWall(wall.wall.mark, rows))


def drawn(wall: LoadedWall, computed: Mapping[str, Computed], unit: str) -> tuple[WallDrawing, str]:
    """The drawing, and in words what can be done to it."""
    drawing = wall_drawing(wall, computed, unit)
    return drawing, POLE_WORDS if drawing.handle else ALL_ALONE


def computed_of(loaded: LoadedProject, panels: Sequence[LoadedPanel]) -> dict[str, Computed]:
    """The results of these panels by their ids."""
    return {panel.id: compute(loaded.project, panel.wall, panel.panel) for panel in panels}
