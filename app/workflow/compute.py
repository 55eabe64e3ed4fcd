"""Everything computed for one panel, each panel once for as long as it stays as it is."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache

from app.brickwork.bond import Bond
from app.brickwork.findings import Finding
from app.brickwork.layout import Layout, lay_out
from app.brickwork.own_bonds import known_bonds
from app.brickwork.place import Place
from app.brickwork.wall import place_in
from app.documents.digest import used_sizes
from app.documents.project_file import sizes_of
from app.documents.results import all_findings
from app.liner.drift import drift
from app.liner.fixing_advice import SpanAdvice, fixing_advice
from app.liner.offcut_values import CuttingPlan
from app.liner.offcuts import cutting_plan
from app.liner.sheet_work import sheet_work
from app.liner.sheets import placed_sheets, sheet_plan
from app.liner.values import Drift, SheetPlan
from app.liner.work_values import SheetWork
from app.order.rules import Rules
from app.order.saw import saw_list
from app.order.saw_saved import Saved
from app.order.saw_values import SawList
from app.order.takeoff import takeoff
from app.order.values import Takeoff
from app.order.work import FaceWork, PanelWork
from app.panel.blend import Blend
from app.panel.keyed import Keyed
from app.panel.project import Day, Liner, Order, Project, Wall
from app.panel.size import BrickSize
from app.panel.values import Panel
from app.workflow.kept import Kept

KEPT = 400_000
"""Pieces of brick whose results are kept: some hundred panels of common size, or sixty large ones."""


@dataclass(frozen=True, slots=True)
class Given:
    """What the results rest on; two panels that are equal here have the same."""

    panel: Panel
    place: Place
    sizes: tuple[BrickSize, ...]
    bonds: tuple[Bond, ...]
    liner: Liner
    order: Order
    day: Day
    length_unit: str
    temperature_unit: str
    blend: Blend = Blend()  # noqa: RUF009 - Blend is frozen

    @property
    def rules(self) -> Rules:
        return Rules(self.order, self.liner, self.blend, self.length_unit)


@dataclass(frozen=True)
class Computed:
    """One panel's layout, and all that follows from it; lengths in words in `unit`.

    What an edit must paint is there; all else is computed when it is asked for the first time.
    """

    layout: Layout
    drift: Drift
    given: Given

    @property
    def unit(self) -> str:
        return self.given.length_unit

    @cached_property
    def plan(self) -> SheetPlan:
        """The sheets and what is left of each, once somebody asks."""
        return sheet_plan(self.layout, self.given.liner)

    @property
    def plan_so_far(self) -> SheetPlan | None:
        """The sheets if somebody has asked already: what is not worth waiting for."""
        known: SheetPlan | None = vars(self).get("plan")
        return known

    @cached_property
    def placed(self) -> int:
        """How many sheets are laid, whether or not what is left of them is known."""
        return placed_sheets(self.layout, self.given.liner)

    @cached_property
    def cutting(self) -> CuttingPlan:
        """Which sheets are unpacked and what is cut from each, once somebody asks."""
        return cutting_plan(self.layout, self.plan, self.given.liner)

    @cached_property
    def sheet_work(self) -> SheetWork:
        """Laps, sheets to cut, hold-downs, seams to tape and edge pieces, once somebody asks."""
        given, units = self.given, (self.given.length_unit, self.given.temperature_unit)
        return sheet_work(self.layout, self.plan, self.cutting, given.liner, given.day, *units)

    @cached_property
    def saw(self) -> SawList:
        """What this panel alone has to be cut, once somebody asks."""
        return saw_list([self.face], self.given.rules)

    @cached_property
    def face(self) -> FaceWork:
        """The brick as it is counted and cut, once somebody asks."""
        return FaceWork(self.layout, self.given.blend)

    @cached_property
    def work(self) -> PanelWork:
        """What the order counts, once somebody asks."""
        return PanelWork(self.face, self.plan, self.cutting)

    @cached_property
    def takeoff(self) -> Takeoff:
        """What this panel alone needs, once somebody asks."""
        return takeoff([self.work], self.saw, self.given.rules)

    @cached_property
    def fixing_advice(self) -> tuple[SpanAdvice, ...]:
        """Where more fixing lines would hold the liner, once somebody asks."""
        return fixing_advice(self.layout, self.drift, self.given.liner, self.given.day)

    @cached_property
    def findings(self) -> tuple[Finding, ...]:
        """What the checks find, once somebody asks: an edit is painted before that."""
        return all_findings(self.layout, self.plan, self.drift, self.unit, self.given.blend)


def compute(project: Project, wall: Wall, panel: Panel) -> Computed:
    """Layout, sheets, drift, takeoff and findings of a panel of this project; raises nothing for one that was read."""
    place = place_in(wall, panel, sizes_of(project), project.liner.joint_give.inches, known_bonds(project))
    sizes = used_sizes(project, panel)
    bonds = _used_bonds(project, panel)
    units = project.length_unit, project.temperature_unit
    return _KEPT(Given(panel, place, sizes, bonds, project.liner, project.order, project.day, *units, project.blend))


def takeoff_of(project: Project, panels: Sequence[Computed]) -> Takeoff:
    """The order for several panels of a project together: overage and packs once, on the sum."""
    return _takeoff(Keyed(tuple(map(id, panels)), tuple(panels)), Rules.of(project))


@lru_cache(maxsize=8)
def _takeoff(panels: Keyed[tuple[Computed, ...]], rules: Rules) -> Takeoff:
    """Kept, as pages ask for it again; it holds the panels' results, so their ids stay their own."""
    return takeoff([panel.work for panel in panels.value], _saw_list(panels, rules), rules)


def saw_list_of(project: Project, panels: Sequence[Computed]) -> SawList:
    """What has to be cut for several panels of a project together: their pieces share bricks."""
    return _saw_list(Keyed(tuple(map(id, panels)), tuple(panels)), Rules.of(project))


def saved_of(project: Project, panels: Sequence[Computed]) -> Saved:
    """How many bricks several panels take cut together, and panel by panel."""
    return Saved(saw_list_of(project, panels).bricks, sum(panel.saw.bricks for panel in panels))


@lru_cache(maxsize=8)
def _saw_list(panels: Keyed[tuple[Computed, ...]], rules: Rules) -> SawList:
    """Kept, as the order and the saw list's page and sheets ask for it again."""
    if len(panels.value) == 1:
        return panels.value[0].saw
    return saw_list([panel.face for panel in panels.value], rules)


def _used_bonds(project: Project, panel: Panel) -> tuple[Bond, ...]:
    known = known_bonds(project)
    return tuple(known[name] for name in sorted({panel.field.bond, *(zone.work.bond for zone in panel.zones)}))


def _computed(given: Given) -> Computed:
    sizes, bonds = {size.name: size for size in given.sizes}, {bond.name: bond for bond in given.bonds}
    layout = lay_out(given.panel, sizes, bonds, given.place)
    drifted = drift(layout, given.liner, given.day, given.temperature_unit, length_unit=given.length_unit)
    return Computed(layout, drifted, given)


_KEPT = Kept(_computed, lambda computed: len(computed.layout.units) + 1_000, KEPT)
