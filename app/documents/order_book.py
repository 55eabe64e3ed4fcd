"""What a workbook of an order is made from."""

from dataclasses import dataclass
from datetime import date

from app.order.rules import Rules
from app.order.saw_values import SawList
from app.order.values import Casting, ShortList, Takeoff
from app.order.work import PanelWork
from app.panel.project import Project


@dataclass(frozen=True, slots=True)
class BookPanel:
    """One panel of the order, its own saw list with it; `digest` names the layout it was counted from."""

    casting: Casting
    digest: str
    work: PanelWork
    takeoff: Takeoff
    saw: SawList


@dataclass(frozen=True, slots=True)
class OrderBook:
    """The order of the panels of a scope; `short` is of the whole project, `day` the one on which it was made."""

    project: Project
    scope: str
    revision: str
    day: date
    takeoff: Takeoff
    panels: tuple[BookPanel, ...]
    saw: SawList
    short: ShortList

    @property
    def unit(self) -> str:
        """The unit of lengths: "in" or "mm"."""
        return self.project.length_unit

    @property
    def rules(self) -> Rules:
        return Rules.of(self.project)
