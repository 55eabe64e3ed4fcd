"""A project's order against its yard: what was delivered, what placed panels took, what is short."""

from collections.abc import Mapping, Sequence
from datetime import date
from functools import lru_cache

from app.order.rules import Rules
from app.order.saw import saw_list
from app.order.short import castings_so_far, short_list
from app.order.takeoff import takeoff
from app.order.values import Casting, ShortList
from app.panel.keyed import Keyed
from app.workflow.compute import Computed, compute, takeoff_of
from app.workflow.loading import LoadedPanel, LoadedProject

Rows = tuple[tuple[int, ...], ...]
Nets = tuple[Mapping[str, float], ...]


def short_of(loaded: LoadedProject, today: date) -> ShortList:
    """What is short for the next casting day of the whole project, as deliveries are the project's; raises nothing."""
    project, castings = loaded.project, [casting_of(panel) for panel in loaded.panels]
    computed = tuple(compute(project, panel.wall, panel.panel) for panel in loaded.panels)
    whole = takeoff_of(project, computed).bought
    *rows, everyone = castings_so_far(castings)
    before = tuple(row for row in rows if row != everyone)
    nets = _nets(Keyed(tuple(map(id, computed)), computed), before, Rules.of(project))
    all_of = {line.item: line.net for line in whole}
    nets += (all_of,) * (len(rows) + 1 - len(before))
    return short_list(castings, nets, whole, project.deliveries, project.order.overage_percent, today.isoformat())


def casting_of(panel: LoadedPanel) -> Casting:
    """When one panel is cast."""
    value = panel.panel
    return Casting(panel.wall.mark, value.mark, value.cast_on or "", value.placed)


@lru_cache(maxsize=8)
def _nets(panels: Keyed[tuple[Computed, ...]], rows: Rows, rules: Rules) -> Nets:
    """Net by item of the panels of each row together, one takeoff a different row; kept for the next page."""
    found = {row: _net([panels.value[k] for k in row], rules) for row in dict.fromkeys(rows)}
    return tuple(found[row] for row in rows)


def _net(panels: Sequence[Computed], rules: Rules) -> Mapping[str, float]:
    saw = saw_list([panel.face for panel in panels], rules)
    return {line.item: line.net for line in takeoff([panel.work for panel in panels], saw, rules).bought}
