"""Layouts as the order counts them and the saw cuts them."""

from functools import lru_cache

from app.brickwork.layout import Layout
from app.liner.offcut_values import CuttingPlan
from app.liner.offcuts import cutting_plan
from app.liner.sheets import sheet_plan
from app.liner.values import SheetPlan
from app.order.rules import Rules
from app.order.saw import saw_list
from app.order.saw_values import SawList
from app.order.takeoff import takeoff
from app.order.values import Takeoff
from app.order.work import FaceWork, PanelWork
from app.panel.blend import Blend
from app.panel.keyed import Keyed
from app.panel.project import Liner, Order


def work(layout: Layout, liner: Liner = Liner(), blend: Blend = Blend()) -> PanelWork:  # noqa: B008 - frozen
    return PanelWork(FaceWork(layout, blend), *_sheets(Keyed((id(layout),), layout), liner))


@lru_cache(maxsize=64)
def _sheets(layout: Keyed[Layout], liner: Liner) -> tuple[SheetPlan, CuttingPlan]:
    """Kept, as a test asks for the same face in other colours or by other rules."""
    plan = sheet_plan(layout.value, liner)
    return plan, cutting_plan(layout.value, plan, liner)


def saw_of(
    layouts: list[Layout],
    order: Order = Order(),  # noqa: B008 - frozen
    unit: str = "in",
    blend: Blend = Blend(),  # noqa: B008 - frozen
) -> SawList:
    return saw_list([FaceWork(layout, blend) for layout in layouts], Rules(order, Liner(), blend, unit))


def takeoff_of(
    layouts: list[Layout],
    order: Order = Order(),  # noqa: B008 - frozen
    unit: str = "in",
    blend: Blend = Blend(),  # noqa: B008 - frozen
    liner: Liner = Liner(),  # noqa: B008 - frozen
) -> Takeoff:
    works = [work(layout, liner, blend) for layout in layouts]
    return takeoff(works, saw_of(layouts, order, unit, blend), Rules(order, liner, blend, unit))
