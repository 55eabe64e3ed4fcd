"""Unpacked sheets that give more than one laid sheet: every way to cut one drawn once, with how often it is cut."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from app.brickwork.layout import Layout
from app.drawing.cut_cells import CutCell, cut_numbers, cut_pockets, cut_trims, cut_waste
from app.drawing.drawing import Drawing
from app.drawing.lettering import with_fractions
from app.drawing.marks import LARGE, NORMAL, SMALL, Layer, Mark, Text
from app.drawing.moved import moved
from app.drawing.scales import ISO_SCALES, US_SCALES, Margins, Scale
from app.liner.cut_patterns import cut_patterns
from app.liner.mould import mould
from app.liner.offcut_values import CuttingPlan
from app.panel.project import Liner

PAPER_MM = 380.0
"""How wide a row of sheets may be: an A3 sheet lying, less its margins, mm."""

BETWEEN_MM = (9.0, 6.0)
"""Between sheets across and up, mm."""

AROUND = Margins(left=8.0, right=8.0, bottom=8.0, top=30.0)
"""Room for the title above and the edge of the paper, mm."""

WORDS = "AS THEY LIE ON THE BED, back of the sheet up; each number is the sheet that is laid there, hatched is waste"

LAYERS: dict[str, Callable[[CutCell], Iterator[Mark]]] = {
    "cut_waste": cut_waste,
    "cut_pockets": cut_pockets,
    "cut_trims": cut_trims,
    "cut_numbers": cut_numbers,
}
"""From the lowest up; the title lies over them."""


@dataclass(frozen=True, slots=True)
class _Placed:
    """A pattern with its upper left corner, inches from the drawing's upper left."""

    cell: CutCell
    x: float
    down: float


def usual_scale(unit: str) -> Scale:
    """1/2 in. to the foot, or 1:20 for a project in metric."""
    return ISO_SCALES[4] if unit == "mm" else US_SCALES[4]


def cut_sheets_view(
    layout: Layout,
    cutting: CuttingPlan,
    liner: Liner,
    *,
    scale: Scale | None = None,
    unit: str = "in",
    title: str = "",
    paper_mm: float = PAPER_MM,
) -> Drawing:
    """The patterns in rows from the upper left, the commonest first, and how many sheets are not shared.

    Where no sheet gives more than one, words say so. A sheet wider than `paper_mm` stands in a row alone and runs over.
    """
    chosen = scale or usual_scale(unit)
    cells = list(_cells(layout, cutting, liner, chosen))
    placed = list(_placed(cells, paper_mm * chosen.inches_per_mm, chosen))
    wide = max((one.x + one.cell.size[0] for one in placed), default=150.0 * chosen.inches_per_mm)
    high = max((one.down + one.cell.size[1] for one in placed), default=0.0)
    named = title or f"{layout.panel.mark}, cut sheets: {cutting.used} to unpack for {cutting.placed} places"
    layers = [
        Layer(name, tuple(moved(mark, one.x, high - one.down) for one in placed for mark in draw(one.cell)))
        for name, draw in LAYERS.items()
    ]
    heading = Layer("title", tuple(_title(chosen, high, named, cutting)))
    return Drawing(named, WORDS, wide, high, AROUND, chosen, (*layers, heading))


def _cells(layout: Layout, cutting: CuttingPlan, liner: Liner, scale: Scale) -> Iterator[CutCell]:
    regions = {(region.size.name, region.bond.name): region for region in reversed(layout.regions)}
    for pattern in cut_patterns(cutting):
        region = regions[pattern.first.size, pattern.first.bond]
        yield CutCell(pattern, region, mould(region.bond, region.size, liner.columns, liner.rows), scale)


def _placed(cells: Sequence[CutCell], paper: float, scale: Scale) -> Iterator[_Placed]:
    """In rows; a row is as high as its highest."""
    across, down = (between * scale.inches_per_mm for between in BETWEEN_MM)
    x = top = row = 0.0
    for cell in cells:
        wide, high = cell.size
        if x > 0 and x + wide > paper:
            x, top, row = 0.0, top + row + down, 0.0
        yield _Placed(cell, x, top)
        x, row = x + wide + across, max(row, high)


def _title(scale: Scale, high: float, named: str, cutting: CuttingPlan) -> Iterator[Mark]:
    def at(above: float) -> float:
        return high + above * scale.inches_per_mm

    yield Text(0, at(24), named, "text strong", LARGE, "start")
    yield Text(0, at(18), WORDS, "text strong", NORMAL, "start")
    shared = sum(sheet.is_shared for sheet in cutting.sheets)
    counts = f"{shared} sheets give more than one and are drawn; {cutting.used - shared} give one each"
    yield Text(0, at(12.5), f"Scale {with_fractions(scale.words)}. {counts}.", "text", SMALL, "start")
    proven = "proven fewest" if cutting.is_proven else f"no plan can do with less than {cutting.bound}"
    moves = "A trim lies where its pockets are: moved by whole steps of the bond, never turned"
    yield Text(0, at(8.5), f"{moves}; {proven}.", "text", SMALL, "start")
