"""Sheets of liner in words: how many, which are cut together, what holds them, what ends the courses."""

from collections.abc import Sequence

from app.lengths import format_length
from app.liner.knife import knife_words
from app.liner.offcut_values import CuttingPlan
from app.liner.values import SheetPlan
from app.liner.work_values import MOST_IN_STACK, EdgePieces, Fix, HoldDown, Lap, Stack
from app.web.words import counted, listed


def proof_words(cutting: CuttingPlan) -> str:
    """How far the plan is proven; nothing for no sheets."""
    if not cutting.placed:
        return ""
    if cutting.is_proven:
        return "proven: no plan needs fewer"
    more = cutting.used - cutting.bound
    return f"at least {cutting.bound:,} are needed, so at most {more:,} too many, {cutting.gap:.1%}"


def saved_words(cutting: CuttingPlan) -> str:
    """What cutting trims from offcuts saves; nothing for no sheets."""
    saved = cutting.naive - cutting.used
    return f"{counted(saved, 'sheet')} saved" if saved else "nothing to save"


def stack_words(stack: Stack) -> str:
    """How a stack is cut."""
    if stack.count == 1:
        return "one sheet"
    together = f"{stack.count} sheets"
    return together if stack.passes == 1 else f"{together}, {stack.passes} passes of at most {MOST_IN_STACK}"


def cut_words(stack: Stack, unit: str) -> tuple[str, ...]:
    """Every cut of a stack, the same ones once with how often."""
    said = [knife_words(cut, unit) for cut in stack.cuts]
    return tuple(
        f"{words} ({said.count(words)} of them)" if said.count(words) > 1 else words for words in dict.fromkeys(said)
    )


def numbers_words(numbers: Sequence[int]) -> str:
    """Numbers of sheets."""
    return listed([str(number) for number in numbers])


def lap_words(plan: SheetPlan, laps: Sequence[Lap], unit: str) -> str:
    """How sheets lie over one another."""
    if not laps:
        return "No sheet lies over another."
    width = format_length(plan.lap, unit)
    words = f"Each sheet has a flange of {width} along its two far edges; the next one lies on it."
    return f"{words} Laid in the order of the numbers, all {len(laps):,} laps fall on a sheet that lies already."


def hold_words(holds: Sequence[HoldDown]) -> str:
    """How bricks hold loose sheets down."""
    bricks = sum(len(hold.units) for hold in holds)
    if not bricks:
        return "No brick has its middle on a sheet, so none holds one down."
    return (
        f"Lay {counted(bricks, 'brick')} first, on {counted(len(holds), 'sheet')}: at the corners of each, then on its"
        " largest laps. They hold it down until all brick is placed."
    )


def fix_words(fixes: Sequence[Fix], when: str) -> str:
    """Sheets to fix, with the same reason once; nothing for none."""
    reasons: dict[str, list[int]] = {}
    for fix in fixes:
        if fix.when == when:
            reasons.setdefault(fix.reason, []).append(fix.sheet)
    said = [f"{numbers_words(sheets)} ({reason})" for reason, sheets in reasons.items()]
    return "; ".join(said)


def edge_words(pieces: EdgePieces, unit: str) -> str:
    """How much finishing edge piece is needed."""
    if not pieces.runs:
        return "Courses end at a form, a strip or a return everywhere: no edge piece is needed."
    kinds = [f"{format_length(length, unit)} {kind}" for kind, length in pieces.by_kind.items() if length]
    return f"{format_length(pieces.length, unit)} of edge piece where courses stop in plain concrete: {listed(kinds)}."
