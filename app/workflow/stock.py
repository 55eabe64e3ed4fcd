"""A project's order against its yard: what was delivered, what placed panels took, what is short."""

from app.order.short import short_list
from app.order.values import Need, ShortList
from app.workflow.compute import Computed, compute, takeoff_of
from app.workflow.loading import LoadedPanel, LoadedProject


def short_of(loaded: LoadedProject) -> ShortList:
    """What is short for the next casting day of the whole project, as deliveries are the project's; raises nothing."""
    project = loaded.project
    computed = [compute(project, panel.wall, panel.panel) for panel in loaded.panels]
    needs = [need_of(panel, found) for panel, found in zip(loaded.panels, computed, strict=True)]
    lines = takeoff_of(project, computed).bought
    return short_list(needs, lines, project.deliveries, project.order.overage_percent)


def need_of(panel: LoadedPanel, found: Computed) -> Need:
    """What one panel takes of everything that is bought, its own cut bricks and unpacked sheets in it."""
    net = {line.item: line.net for line in found.takeoff.bought}
    value = panel.panel
    return Need(panel.wall.mark, value.mark, value.cast_on or "", value.placed, net)
