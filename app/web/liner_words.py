"""Sheets of liner in words: how many, which are cut alike, what holds them, what is taped, what ends the courses."""

from collections.abc import Sequence

from app.lengths import format_length
from app.liner.fixes import SMALL_SHARE
from app.liner.knife_words import line_words, to_tick
from app.liner.offcut_values import CuttingPlan
from app.liner.stack_words import run_words
from app.liner.values import SheetPlan
from app.liner.work_values import CutList, EdgePieces, Fix, HoldDown, Lap, SheetWork, Stack
from app.web.words import counted, listed

WHY = {
    "wind": f"a far edge on which no later sheet lies, or less than {SMALL_SHARE:.0%} of a sheet",
    "swing": "longer than the liner may grow free",
}


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


def cut_words(stack: Stack, unit: str) -> tuple[str, ...]:
    """Every cut of a stack, teeth and arcs as one, the same ones once with how often."""
    said = [line_words(line, unit) for line in stack.lines]
    return tuple(
        f"{words} ({said.count(words)} of them)" if said.count(words) > 1 else words for words in dict.fromkeys(said)
    )


def cut_list_words(cut: CutList) -> str:
    """How many sheets are cut in how many ways, and how many are laid whole."""
    if not cut.stacks:
        return "No sheet is cut."
    many = sum(stack.count for stack in cut.stacks)
    words = f"{counted(cut.used, 'sheet')} to unpack: {many:,} to cut, in {counted(len(cut.stacks), 'way')}"
    return f"{words}, and {len(cut.whole):,} whole." if cut.whole else f"{words}."


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


def flange_words(work: SheetWork) -> str:
    """Where flanges are cut off; nothing for liner without laps."""
    if not work.laps:
        return ""
    words = "Cut a flange off where no later sheet lies on it: at the far edges of the brick and beside openings"
    whole = f"; of whole sheets that is so for {run_words(work.free_flanges)}" if work.free_flanges else ""
    return f"{words}{whole}."


def tape_words(work: SheetWork, unit: str) -> str:
    """Which seams are taped, as there is no flange; nothing for none."""
    if not work.taped:
        return ""
    sheets = tuple(dict.fromkeys(seam.over for seam in work.taped))
    come = f"Sheet {sheets[0]} comes" if len(sheets) == 1 else f"Sheets {run_words(sheets)} come"
    seams = "that seam" if len(work.taped) == 1 else "those seams"
    return (
        f"Seam tape: {to_tick(work.taped_length, unit)}. {come} from inside an unpacked sheet, so there is no flange"
        f" under the next one: butt and tape {seams}."
    )


def fix_words(fixes: Sequence[Fix], when: str) -> str:
    """Sheets to fix and why; nothing for none."""
    numbers = tuple(fix.sheet for fix in fixes if fix.when == when)
    return f"{run_words(numbers)} ({WHY[when]})" if numbers else ""


def edge_words(pieces: EdgePieces, unit: str) -> str:
    """How much finishing edge piece is needed."""
    if not pieces.runs:
        return "Courses end at a form, a strip or a return everywhere: no edge piece is needed."
    kinds = [f"{format_length(length, unit)} {kind}" for kind, length in pieces.by_kind.items() if length]
    return f"{format_length(pieces.length, unit)} of edge piece where courses stop in plain concrete: {listed(kinds)}."
