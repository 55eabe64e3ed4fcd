"""Sheets to cut: every stack of unpacked sheets that are cut alike, drawn once with what the knife needs."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from app.brickwork.layout import Layout
from app.drawing.drawing import Drawing
from app.drawing.lettering import with_fractions
from app.drawing.marks import LARGE, NORMAL, SMALL, Layer, Mark, Text, box
from app.drawing.moved import moved
from app.drawing.scales import ISO_SCALES, US_SCALES, Margins, Scale
from app.drawing.stack_cells import StackCell, stack_cuts, stack_numbers, stack_pockets, stack_waste, stack_words
from app.liner.places import starts
from app.liner.pockets import pockets
from app.liner.values import SheetPlan
from app.liner.work_values import Stack
from app.panel.project import Liner

PAPER_MM = 380.0
"""How wide a row of sheets may be: an A3 sheet lying, less its margins, mm."""

BETWEEN_MM = (9.0, 7.0)
"""Between sheets across and up, mm."""

AROUND = Margins(left=8.0, right=8.0, bottom=8.0, top=30.0)
"""Room for the title above and the edge of the paper, mm."""

WASTE_KEY_MM = (5.0, 2.8)
"""Width and height of the key's box for waste, mm."""

WORDS = "AS THEY LIE ON THE BED, back of the sheet up; measured from the corner where laying starts"

COUNTED = (
    "Whole pockets of the first course and whole courses are counted from that corner; the measure runs on from the far"
    " edge of the last one, or from the near edge of the first. At a joint line is at its near edge, if nothing more is"
    " said."
)

READ = (
    "A number on a piece is the sheet that it is laid as; crossed out is waste. Cuts are numbered in order, teeth"
    " and arcs as one; a tick is a raised joint ridge that the cut crosses."
)

CAUTION = "Cut away from the body, on a board, with a guarded blade and cut-resistant gloves; site rules govern."

LAYERS: dict[str, Callable[[StackCell], Iterator[Mark]]] = {
    "stack_waste": stack_waste,
    "stack_pockets": stack_pockets,
    "stack_cuts": stack_cuts,
    "stack_numbers": stack_numbers,
    "stack_words": stack_words,
}
"""From the lowest up; the title lies over them."""


@dataclass(frozen=True, slots=True)
class _Placed:
    """A stack with its upper left corner, inches from the drawing's upper left."""

    cell: StackCell
    x: float
    down: float


def usual_scale(unit: str) -> Scale:
    """1/2 in. to the foot, or 1:20 for a project in metric."""
    return ISO_SCALES[4] if unit == "mm" else US_SCALES[4]


def sheets_to_cut_view(
    layout: Layout,
    plan: SheetPlan,
    liner: Liner,
    stacks: Sequence[Stack],
    *,
    scale: Scale | None = None,
    unit: str = "in",
    title: str = "",
    paper_mm: float = PAPER_MM,
) -> Drawing:
    """The stacks in rows from the upper left, the largest first, as they lie on the bed; lengths in words in `unit`.

    No stacks give a drawing that says so. A sheet wider than `paper_mm` stands in a row alone and runs over.
    """
    chosen = scale or usual_scale(unit)
    cells = list(_cells(layout, plan, liner, stacks, chosen, unit))
    placed = list(_placed(cells, paper_mm * chosen.inches_per_mm, chosen))
    wide = max((one.x + one.cell.size[0] for one in placed), default=150.0 * chosen.inches_per_mm)
    high = max((one.down + one.cell.size[1] for one in placed), default=0.0)
    count = sum(stack.count for stack in stacks)
    named = title or f"{layout.panel.mark}, sheets to cut: {count} in {len(stacks)} stacks"
    layers = [
        Layer(name, tuple(moved(mark, one.x, high - one.down) for one in placed for mark in draw(one.cell)))
        for name, draw in LAYERS.items()
    ]
    heading = Layer("title", tuple(_title(chosen, high, named, bool(stacks))))
    return Drawing(named, WORDS, wide, high, AROUND, chosen, (*layers, heading))


def _cells(
    layout: Layout, plan: SheetPlan, liner: Liner, stacks: Sequence[Stack], scale: Scale, unit: str
) -> Iterator[StackCell]:
    regions = {(region.size.name, region.bond.name): region for region in reversed(layout.regions)}
    flips = -1 if plan.corner.endswith("right") else 1, 1 if "lower" in plan.corner else -1
    for stack in stacks:
        region = regions[stack.size, stack.bond]
        grid = pockets(region.bond, region.size, liner.columns, liner.rows, starts(plan.corner))
        yield StackCell(stack, grid, flips, scale, unit, stack.bond if len(regions) > 1 else "")


def _placed(cells: Sequence[StackCell], paper: float, scale: Scale) -> Iterator[_Placed]:
    """In rows; a row is as high as its highest."""
    across, down = (between * scale.inches_per_mm for between in BETWEEN_MM)
    x = top = row = 0.0
    for cell in cells:
        wide, high = cell.size
        if x > 0 and x + wide > paper:
            x, top, row = 0.0, top + row + down, 0.0
        yield _Placed(cell, x, top)
        x, row = x + wide + across, max(row, high)


def _title(scale: Scale, high: float, named: str, has_stacks: bool) -> Iterator[Mark]:
    def at(above: float) -> float:
        return high + above * scale.inches_per_mm

    yield Text(0, at(24), named, "text strong", LARGE, "start")
    yield Text(0, at(18), WORDS, "text strong", NORMAL, "start")
    words = f"Scale {with_fractions(scale.words)}. {COUNTED if has_stacks else 'No sheet is cut.'}"
    yield Text(0, at(12.5), words, "text", SMALL, "start")
    wide, high_mm = (side * scale.inches_per_mm for side in WASTE_KEY_MM)
    yield box(0, at(8.5) - high_mm / 2, wide, high_mm, "sheet waste")
    yield box(0, at(8.5) - high_mm / 2, wide, high_mm, "rule")
    yield Text(wide * 1.3, at(8.5), f"waste. {READ} {CAUTION}", "text", SMALL, "start")
