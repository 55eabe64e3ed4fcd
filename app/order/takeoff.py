"""The takeoff: what some panels need, counted from their layouts, cutting plans and saw cuts."""

from collections.abc import Sequence

from app.order.bricks import brick_lines
from app.order.corners import corner_lines
from app.order.information import information_lines
from app.order.rules import Rules
from app.order.saw_values import SawList
from app.order.sheet_lines import edge_lines, sheet_lines
from app.order.sundries import sundry_lines
from app.order.values import Takeoff
from app.order.work import PanelWork


def takeoff(works: Sequence[PanelWork], saw: SawList, rules: Rules) -> Takeoff:
    """Bricks by size, kind and colour, corner units by hand, liner sheets by mould, what holds the liner, the wash;
    and for information face, brick, concrete and liner mass.

    `saw` is the saw list of these panels together. Every count is a sum over panels; overage and packs are taken once,
    from the sum. A metric project has its areas in m2, its volume in m3 and its weights in kg. No lines for no panels.
    """
    if not works:
        return Takeoff(())
    makers = (corner_lines, sheet_lines, edge_lines, sundry_lines, information_lines)
    others = (line for make in makers for line in make(works, rules))
    return Takeoff((*brick_lines(works, saw, rules), *others))
