"""One way to cut an unpacked sheet, drawn as it lies on the bed: its pockets, each trim with its number, the waste.

A cell's own frame is in inches of sheet with y up; its upper left corner is at 0, 0.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from textwrap import wrap

import numpy as np

from app.brickwork.lattice import lattice
from app.brickwork.regions import Region
from app.brickwork.turning import turned_points
from app.drawing.lettering import text_width_mm
from app.drawing.marks import NORMAL, SMALL, Areas, Floats, Mark, Text, line
from app.drawing.rings import areas_of
from app.drawing.scales import Scale
from app.drawing.styles import Style
from app.liner.cut_patterns import CutPattern, roomiest
from app.liner.mould import Mould
from app.liner.offcut_values import Taken

HEAD_MM, LINE_MM, GAP_MM = 8.0, 3.8, 2.0
"""Room for the line over a drawing, for a line of numbers under it, and between the two, mm."""

BESIDE_MM = 1.6
"""How far beyond the sheet's side a number stands that has no room in its trim, mm."""


@dataclass(frozen=True, slots=True)
class CutCell:
    """A pattern with the mould of its sheets."""

    pattern: CutPattern
    region: Region
    mould: Mould
    scale: Scale

    def mm(self, paper: float) -> float:
        """Inches of sheet under so many millimetres of paper."""
        return paper * self.scale.inches_per_mm

    @property
    def head(self) -> str:
        """How many sheets are cut so, and of which bond where it is not the field's."""
        sheets = self.pattern.sheets
        many = f"{len(sheets)} sheets" if len(sheets) > 1 else f"1 sheet, for {sheets[0].owner}"
        return many if self.region.mark == "field" else f"{many}: {self.region.bond.name}"

    @property
    def size(self) -> tuple[float, float]:
        """Width and height of all that is drawn, inches."""
        wide, high = np.ptp(self.mould.outline, axis=0).tolist()
        words = 1.15 * self.mm(text_width_mm(self.head, NORMAL))
        return max(wide, words), high + self.mm(HEAD_MM + GAP_MM + len(self.lines) * LINE_MM)

    @property
    def lines(self) -> list[str]:
        """Which laid sheets come out of each of these sheets, where there are several; else none."""
        if len(self.pattern.sheets) == 1:
            return []
        letters = int(np.ptp(self.mould.outline[:, 0]) / self.mm(1) / text_width_mm("n", SMALL))
        words = "; ".join(" + ".join(map(str, numbers)) for numbers in self.pattern.numbers)
        return wrap(words, letters)

    def placed(self, points: Floats) -> Floats:
        """Points of the sheet's own frame, mirrored as they lie on the bed."""
        high = self.mould.outline.max(axis=0)
        placed: Floats = np.stack([high[0] - points[..., 0], points[..., 1] - high[1] - self.mm(HEAD_MM)], axis=-1)
        return placed


def cut_waste(cell: CutCell) -> Iterator[Mark]:
    """The whole sheet less what is cut from it, hatched."""
    yield _rings(cell, [cell.mould.outline, *_trim_rings(cell)], "sheet trimmed")


def cut_pockets(cell: CutCell) -> Iterator[Mark]:
    """The sheet's pockets, pale."""
    yield _rings(cell, _pockets(cell), "pocket")


def cut_trims(cell: CutCell) -> Iterator[Mark]:
    """Every cut bold, and the sheet's own edge."""
    yield _rings(cell, [cell.mould.outline], "rule")
    yield _rings(cell, _trim_rings(cell), "knife")


def cut_numbers(cell: CutCell) -> Iterator[Mark]:
    """The number of each laid sheet on every part of its trim that has room; what the sheets are for."""
    for taken in cell.pattern.first.taken:
        yield from _numbers(cell, taken)
    yield Text(0, -cell.mm(HEAD_MM / 2), cell.head, "text strong", NORMAL, "start")
    foot = -cell.mm(HEAD_MM + GAP_MM) - float(np.ptp(cell.mould.outline[:, 1]))
    for k, words in enumerate(cell.lines):
        yield Text(0, foot - cell.mm((k + 0.5) * LINE_MM), words, "text", SMALL, "start")


def _numbers(cell: CutCell, taken: Taken) -> Iterator[Mark]:
    """Upright in a narrow part; beside the sheet, on a line, where not even the largest part has room."""
    number, places = str(taken.number), roomiest(taken)
    wide, high = np.ptp(np.concatenate([np.array(ring) for ring in taken.rings]), axis=0).tolist()
    for k, (x, y, room) in enumerate(places):
        ((at_x, at_y),) = cell.placed(np.array([[x, y]])).tolist()
        size = NORMAL if room > cell.mm(NORMAL) else SMALL
        angle = 90.0 if wide < cell.mm(text_width_mm(number, size)) < high else 0.0
        if 2 * room >= cell.mm(SMALL):
            yield Text(at_x, at_y, number, "text sheet", size, angle=angle)
        elif k == 0:
            beyond = float(np.ptp(cell.mould.outline[:, 0])) + cell.mm(BESIDE_MM)
            yield line([(at_x, at_y), (beyond, at_y)], "rule")
            yield Text(beyond + cell.mm(BESIDE_MM / 2), at_y, number, "text sheet", SMALL, "start")


def _trim_rings(cell: CutCell) -> list[Floats]:
    return [np.array(ring) for taken in cell.pattern.first.taken for ring in taken.rings]


def _rings(cell: CutCell, rings: Iterable[Floats], style: Style) -> Areas:
    return areas_of([cell.placed(ring) for ring in rings], style)


def _pockets(cell: CutCell) -> Floats:
    """Corners of each pocket in the sheet's own frame."""
    bond, shape = cell.region.bond, cell.mould
    lat = lattice(bond, cell.region.size, (0.0, 0.0))
    low = (shape.shifts(lat)[:, None, :] + np.column_stack([lat.x, lat.y])).reshape(-1, 2)
    faces = np.tile(np.column_stack([lat.width, lat.height]), (len(low) // len(lat.x), 1))
    square = np.array([(0, 0), (1, 0), (1, 1), (0, 1)])
    corners = turned_points((low[:, None] + faces[:, None] * square).reshape(-1, 2), bond.turn - shape.turn)
    return corners.reshape(-1, 4, 2)
