"""Sheets to cut: every stack of unpacked sheets that are cut alike, drawn once with what the knife needs."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from textwrap import wrap

from app.brickwork.layout import Layout
from app.drawing.drawing import Drawing
from app.drawing.lettering import text_width_mm, with_fractions
from app.drawing.marks import LARGE, NORMAL, SMALL, Layer, Mark, Text, box
from app.drawing.moved import moved
from app.drawing.scales import ISO_SCALES, US_SCALES, Margins, Scale
from app.drawing.stack_cells import StackCell, stack_cuts, stack_numbers, stack_pockets, stack_waste, stack_words
from app.drawing.styles import Style
from app.liner.places import starts
from app.liner.pockets import pockets
from app.liner.values import SheetPlan
from app.liner.work_values import Stack
from app.panel.project import Liner

PAPER_MM = 380.0
"""How wide a row of sheets may be: an A3 sheet lying, less its margins, mm."""

BETWEEN_MM = (9.0, 7.0)
"""Between sheets across and up, mm."""

SIDE_MM, BELOW_MM, HEAD_MM = 8.0, 8.0, 10.0
"""From the drawing to the edge of the paper, and from the stacks to the lowest line of the title, mm."""

LEAST_MM = 150.0
"""Least width of the drawing, so that the title runs to few lines, mm."""

LINE = 1.7
"""From line to line of the title, in heights of its letters."""

WASTE_KEY_MM = (5.0, 2.8)
"""Width and height of the key's box for waste, over the words about it, mm."""

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


KEY = "waste. "
"""How the line begins before which the key's box stands."""


@dataclass(frozen=True, slots=True)
class _Line:
    """One line of the title."""

    words: str
    style: Style
    size_mm: float


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
    least = min(LEAST_MM, paper_mm) * chosen.inches_per_mm
    wide = max(least, max((one.x + one.cell.size[0] for one in placed), default=0.0))
    high = max((one.down + one.cell.size[1] for one in placed), default=0.0)
    count = sum(stack.count for stack in stacks)
    named = title or f"{layout.panel.mark}, sheets to cut: {count} in {len(stacks)} stacks"
    layers = [
        Layer(name, tuple(moved(mark, one.x, high - one.down) for one in placed for mark in draw(one.cell)))
        for name, draw in LAYERS.items()
    ]
    lines = list(_lines(chosen, named, bool(stacks), wide / chosen.inches_per_mm))
    heading = Layer("title", tuple(_title(chosen, high, lines)))
    above = HEAD_MM + sum(line.size_mm * LINE for line in lines)
    around = Margins(left=SIDE_MM, right=SIDE_MM, bottom=BELOW_MM, top=above)
    return Drawing(named, WORDS, wide, high, around, chosen, (*layers, heading))


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


def _lines(scale: Scale, named: str, has_stacks: bool, room_mm: float) -> Iterator[_Line]:
    """The title on as many lines as it needs, the first on top."""
    words = f"Scale {with_fractions(scale.words)}. {COUNTED if has_stacks else 'No sheet is cut.'}"
    rows: tuple[tuple[str, Style, float], ...] = (
        (named, "text strong", LARGE),
        (WORDS, "text strong", NORMAL),
        (words, "text", SMALL),
        (f"{KEY}{READ} {CAUTION}", "text", SMALL),
    )
    for row, style, size in rows:
        for part in wrap(row, int((room_mm - 1.3 * WASTE_KEY_MM[0]) / text_width_mm("n", size))):
            yield _Line(part, style, size)


def _title(scale: Scale, high: float, lines: Sequence[_Line]) -> Iterator[Mark]:
    mm = scale.inches_per_mm
    above = high + HEAD_MM * mm / 2
    for line in reversed(lines):
        above += line.size_mm * LINE * mm
        if line.words.startswith(KEY):
            wide, tall = (side * mm for side in WASTE_KEY_MM)
            yield box(0, above - tall / 2, wide, tall, "sheet waste")
            yield box(0, above - tall / 2, wide, tall, "rule")
            yield Text(wide * 1.3, above, line.words, line.style, line.size_mm, "start")
        else:
            yield Text(0, above, line.words, line.style, line.size_mm, "start")
