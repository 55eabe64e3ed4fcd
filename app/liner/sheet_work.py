"""All that a crew does with the sheets of one panel. See `sheet_work`."""

from app.brickwork.layout import Layout
from app.liner.edge_pieces import edge_pieces
from app.liner.fixes import fixes
from app.liner.hold_downs import hold_downs
from app.liner.laps import laps
from app.liner.stacks import knife, stacks
from app.liner.values import SheetPlan
from app.liner.work_values import SheetWork
from app.panel.project import Day, Liner


def sheet_work(
    layout: Layout,
    plan: SheetPlan,
    liner: Liner,
    day: Day,
    length_unit: str = "in",
    temperature_unit: str = "F",
) -> SheetWork:
    """Laps, knife cuts, stacks, hold-downs, sheets to fix and edge pieces; reasons in words in these units.

    All empty for no sheets.
    """
    over, equal = laps(plan), stacks(layout, plan, liner)
    return SheetWork(
        laps=over,
        knife=knife(equal),
        stacks=equal,
        hold_downs=hold_downs(layout, plan, over),
        fixes=fixes(plan, over, liner, day, length_unit, temperature_unit),
        edge_pieces=edge_pieces(layout),
    )
