"""All that a crew does with the sheets of one panel. See `sheet_work`."""

from app.brickwork.layout import Layout
from app.liner.edge_pieces import edge_pieces
from app.liner.fixes import fixes, free_flanges
from app.liner.hold_downs import hold_downs
from app.liner.laps import laps
from app.liner.offcut_values import CuttingPlan
from app.liner.seam_tape import seam_tape
from app.liner.stacks import cut_list
from app.liner.values import SheetPlan
from app.liner.work_values import SheetWork
from app.panel.project import Day, Liner


def sheet_work(
    layout: Layout,
    plan: SheetPlan,
    cutting: CuttingPlan,
    liner: Liner,
    day: Day,
    length_unit: str = "in",
    temperature_unit: str = "F",
) -> SheetWork:
    """Laps, sheets to cut, hold-downs, sheets to fix, seams to tape and edge pieces; reasons in words in these units.

    All empty for no sheets.
    """
    over = laps(plan)
    return SheetWork(
        laps=over,
        cut_list=cut_list(layout, plan, cutting, liner),
        hold_downs=hold_downs(layout, plan, over),
        fixes=fixes(plan, over, liner, day, length_unit, temperature_unit),
        free_flanges=free_flanges(plan, over),
        taped=seam_tape(layout, plan, cutting),
        edge_pieces=edge_pieces(layout),
    )
