"""Equal trims, which are cut in one stack."""

from collections.abc import Mapping, Sequence
from string import ascii_uppercase

from app.brickwork.layout import Layout
from app.liner.knife import knife_cuts
from app.liner.own_trims import own_trims
from app.liner.values import SheetPlan
from app.liner.work_values import KnifeCut, Stack
from app.panel.project import Liner


def stacks(layout: Layout, plan: SheetPlan, liner: Liner) -> tuple[Stack, ...]:
    """Every trimmed sheet in the stack of those equal to it, the largest stack first; none for no trims.

    Equal are trims of one kind of sheet with the same outline in the sheet's own frame; one of a kind is a stack of
    its own.
    """
    areas = {sheet.number: sheet.area for sheet in plan.sheets}
    groups = sorted(own_trims(layout, plan), key=lambda trim: (-len(trim.sheets), trim.sheets[0]))
    away = plan.sheets[0].away if plan.sheets else (1, 1)
    return tuple(
        Stack(
            mark=letters(k),
            size=trim.region.size.name,
            bond=trim.region.bond.name,
            sheets=trim.sheets,
            outline=trim.outline,
            rings=trim.rings,
            cuts=knife_cuts(trim, liner, away),
            area=areas[trim.sheets[0]],
        )
        for k, trim in enumerate(groups)
    )


def letters(number: int) -> str:
    """A to Z, then AA, AB and so on, for 0, 1, 2 …"""
    before, last = divmod(number, len(ascii_uppercase))
    return (letters(before - 1) if before else "") + ascii_uppercase[last]


def knife(stacks: Sequence[Stack]) -> Mapping[int, tuple[KnifeCut, ...]]:
    """The cuts of each trimmed sheet by its number, joints nominal."""
    return {number: stack.cuts for stack in stacks for number in stack.sheets}
