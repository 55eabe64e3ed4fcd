"""Drawing scales and sheet sizes of open standards, and the largest scale that fits."""

from collections.abc import Sequence
from dataclasses import dataclass

MM_PER_INCH = 25.4


@dataclass(frozen=True, slots=True)
class Scale:
    """`ratio` real inches to one on paper, and how a drawing says so."""

    ratio: float
    words: str

    @property
    def inches_per_mm(self) -> float:
        """Inches of panel under one millimetre of paper."""
        return self.ratio / MM_PER_INCH

    @property
    def mm_per_inch(self) -> float:
        """Millimetres of paper for one inch of panel."""
        return MM_PER_INCH / self.ratio


ISO_SCALES = tuple(Scale(ratio, f"1:{ratio}") for ratio in (1, 2, 5, 10, 20, 50, 100, 200, 500))
"""Full size and reductions: ISO 5455."""

US_SCALES = tuple(
    Scale(ratio, f'{words}" = 1\'-0"')
    for words, ratio in (
        ("3", 4),
        ("1 1/2", 8),
        ("1", 12),
        ("3/4", 16),
        ("1/2", 24),
        ("3/8", 32),
        ("1/4", 48),
        ("3/16", 64),
        ("1/8", 96),
        ("3/32", 128),
        ("1/16", 192),
    )
)
"""Architectural scales of inches to the foot: common practice."""

QUARTER_INCH = US_SCALES[6]


@dataclass(frozen=True, slots=True)
class Margins:
    """Paper around a drawing's panel, or inside a sheet's edge, mm."""

    left: float
    right: float
    bottom: float
    top: float


@dataclass(frozen=True, slots=True)
class SheetSize:
    """A sheet of paper as it lies before us, mm."""

    name: str
    width: float
    height: float

    @property
    def landscape(self) -> "SheetSize":
        return SheetSize(self.name, max(self.width, self.height), min(self.width, self.height))


SHEET_MARGINS = Margins(left=20.0, right=10.0, bottom=10.0, top=10.0)
"""Filing margin at the left, 10 mm elsewhere: ISO 5457."""

_SIZES = (
    ("A0", 841, 1189), ("A1", 594, 841), ("A2", 420, 594), ("A3", 297, 420), ("A4", 210, 297),
    ("ANSI A", 215.9, 279.4), ("ANSI B", 279.4, 431.8), ("ANSI C", 431.8, 558.8), ("ANSI D", 558.8, 863.6),
    ("ANSI E", 863.6, 1117.6),
    ("ARCH A", 228.6, 304.8), ("ARCH B", 304.8, 457.2), ("ARCH C", 457.2, 609.6), ("ARCH D", 609.6, 914.4),
    ("ARCH E", 914.4, 1219.2), ("ARCH E1", 762, 1066.8),
)  # fmt: skip

SHEETS = {name: SheetSize(name, width, height) for name, width, height in _SIZES}
"""ISO 216 A sizes, ANSI/ASME Y14.1 sizes and architectural sizes, upright; inch sizes by 25.4."""


class NoScaleFits(ValueError):
    """Not even the smallest scale brings the drawing onto the paper."""


def largest_scale(
    width: float, height: float, paper: tuple[float, float], around: Margins, scales: Sequence[Scale] = US_SCALES
) -> Scale:
    """The largest of `scales` at which width x height inches with `around` mm fits on `paper` mm.

    Raises NoScaleFits, with the sizes, when none does.
    """
    room_x, room_y = paper[0] - around.left - around.right, paper[1] - around.bottom - around.top
    for scale in sorted(scales, key=lambda scale: scale.ratio):
        if width * scale.mm_per_inch <= room_x + 1e-9 and height * scale.mm_per_inch <= room_y + 1e-9:
            return scale
    raise NoScaleFits(
        f"drawing of {width:g} x {height:g} in: no scale fits in {room_x:g} x {room_y:g} mm of paper;"
        f" the smallest tried is {scales[-1].words}"
    )


def usable(sheet: SheetSize, margins: Margins = SHEET_MARGINS) -> tuple[float, float]:
    """Width and height inside the sheet's margins, mm."""
    return sheet.width - margins.left - margins.right, sheet.height - margins.bottom - margins.top
