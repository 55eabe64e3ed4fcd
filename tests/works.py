"""A layout as the order counts it, with its sheets and cutting plan."""

from app.brickwork.layout import Layout
from app.liner.offcuts import cutting_plan
from app.liner.sheets import sheet_plan
from app.order.rules import Rules
from app.order.takeoff import takeoff
from app.order.values import Takeoff
from app.order.work import PanelWork
from app.panel.blend import Blend
from app.panel.project import Liner, Order


def work(layout: Layout, liner: Liner = Liner(), blend: Blend = Blend()) -> PanelWork:  # noqa: B008 - frozen
    plan = sheet_plan(layout, liner)
    return PanelWork(layout, plan, cutting_plan(layout, plan, liner), blend)


def takeoff_of(
    layouts: list[Layout],
    order: Order = Order(),  # noqa: B008 - frozen
    unit: str = "in",
    blend: Blend = Blend(),  # noqa: B008 - frozen
    liner: Liner = Liner(),  # noqa: B008 - frozen
) -> Takeoff:
    return takeoff([work(layout, liner, blend) for layout in layouts], Rules(order, liner, blend, unit))
