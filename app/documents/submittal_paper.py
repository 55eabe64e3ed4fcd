"""The paper of a submittal: frame, title block, and where a drawing lies so that neither is touched."""

from collections.abc import Sequence
from dataclasses import dataclass

from app.drawing.drawing import Drawing
from app.drawing.layers.title import TITLE_MM
from app.drawing.marks import LARGE
from app.drawing.scales import (
    ISO_SCALES,
    SHEET_MARGINS,
    SHEETS,
    US_SCALES,
    Margins,
    NoScaleFits,
    Scale,
    SheetSize,
    largest_scale,
)

TITLE_BLOCK = (180.0, 36.0)
"""Width and height, mm: 180 mm is the width of ISO 7200."""

INSET_MM = 4.0
"""Clear space inside the frame, mm."""

HEADING_MM = 9.0
"""The line of words at a sheet's head, mm."""

WORDS_MM = 175.0
"""How far the words under a drawing reach from its left edge, mm; the title block stands clear of them."""

LARGEST_RATIO = 20.0
"""No panel is drawn larger than 1:20: a set of drawings is read at one glance, details have sheets of their own."""

_LAST_RESORTS = (ISO_SCALES[-2], ISO_SCALES[-1])


@dataclass(frozen=True, slots=True)
class Placed:
    """Where a drawing lies: left and top from the sheet's corner, width and height, mm."""

    x: float
    y: float
    width: float
    height: float


def sheet_named(name: str) -> SheetSize:
    """The sheet of that name, lying; "ISO A3" is "A3". Raises KeyError, with the names that are known."""
    plain = name.removeprefix("ISO ")
    if plain not in SHEETS:
        raise KeyError(f"sheet {name!r}: expected one of {', '.join(SHEETS)}")
    return SHEETS[plain].landscape


def scales_for(unit: str) -> tuple[Scale, ...]:
    """Scales that a project's sheets may use, largest first: of ISO 5455 for "mm", inches to the foot for "in"."""
    scales = ISO_SCALES if unit == "mm" else US_SCALES + _LAST_RESORTS
    return tuple(scale for scale in scales if scale.ratio >= LARGEST_RATIO)


def fitting_scale(
    size: tuple[float, float], around: Margins, sheet: SheetSize, scales: Sequence[Scale], mark: str
) -> Scale:
    """The largest scale at which a panel of that width and height, inches, goes onto the sheet.

    Raises NoScaleFits, naming the panel, when not even the smallest does.
    """
    try:
        return largest_scale(*size, _room(around, sheet), around, scales)
    except NoScaleFits as misfit:
        raise NoScaleFits(f"panel {mark} on sheet {sheet.name}: {misfit}; choose a larger sheet") from None


def placed(drawing: Drawing, sheet: SheetSize) -> Placed:
    """The drawing in the middle of its room, as far as its words stay clear of the title block."""
    width, height = drawing.paper
    room_x, room_y = _room(drawing.margins, sheet)
    free_x, free_y = max(0.0, room_x - width), max(0.0, room_y - height)
    if _stands_beside_words(sheet):
        free_x = min(free_x, 2 * (_inner(sheet)[0] - TITLE_BLOCK[0] - WORDS_MM))
    left, top = SHEET_MARGINS.left + INSET_MM, SHEET_MARGINS.top + INSET_MM + HEADING_MM
    return Placed(left + free_x / 2, top + free_y / 2, width, height)


def wall_room(sheet: SheetSize) -> tuple[float, float]:
    """Paper for a wall's drawing, mm: all of it above the title block, as its tape runs the whole width."""
    width, height = _inner(sheet)
    return width, height - HEADING_MM - TITLE_BLOCK[1] - INSET_MM


def wall_placed(drawing: Drawing, sheet: SheetSize) -> Placed:
    """A wall's drawing in the middle of that room."""
    (width, height), (room_x, room_y) = drawing.paper, wall_room(sheet)
    left, top = SHEET_MARGINS.left + INSET_MM, SHEET_MARGINS.top + INSET_MM + HEADING_MM
    return Placed(left + max(0.0, room_x - width) / 2, top + max(0.0, room_y - height) / 2, width, height)


def goes_onto(drawing: Drawing, sheet: SheetSize) -> bool:
    """Whether a drawing has room on the sheet as it is drawn."""
    (width, height), (room_x, room_y) = drawing.paper, _room(drawing.margins, sheet)
    return width <= room_x + 1e-9 and height <= room_y + 1e-9


def inner_room(sheet: SheetSize) -> tuple[float, float]:
    """Paper for a shop drawing, mm: all of it above the title block."""
    return wall_room(sheet)


def shop_scales(unit: str, usual: Scale) -> tuple[Scale, ...]:
    """The usual scale of a shop drawing and all smaller ones, largest first."""
    scales = ISO_SCALES if unit == "mm" else US_SCALES
    return tuple(scale for scale in scales if scale.ratio >= usual.ratio)


def _room(around: Margins, sheet: SheetSize) -> tuple[float, float]:
    """Paper for a drawing with `around`: above the title block, its words beside that where the sheet is wide."""
    width, height = _inner(sheet)
    words = around.bottom - TITLE_MM + LARGE if _stands_beside_words(sheet) else 0.0
    return width, height - HEADING_MM - max(0.0, TITLE_BLOCK[1] + INSET_MM - words)


def _stands_beside_words(sheet: SheetSize) -> bool:
    return _inner(sheet)[0] >= TITLE_BLOCK[0] + WORDS_MM


def _inner(sheet: SheetSize) -> tuple[float, float]:
    width = sheet.width - SHEET_MARGINS.left - SHEET_MARGINS.right - 2 * INSET_MM
    return width, sheet.height - SHEET_MARGINS.top - SHEET_MARGINS.bottom - 2 * INSET_MM


PLOT_MM, PLOTS_MM, BETWEEN_MM = 240.0, 340.0, 8.0
"""Greatest width of a growth plot, width of paper from which two stand side by side, space between them, mm."""


def plot_width(sheet: SheetSize) -> float:
    """How wide a growth plot is drawn, mm: two stand side by side where there is room."""
    width = _inner(sheet)[0]
    return min(PLOT_MM, (width - BETWEEN_MM) / 2 if width >= PLOTS_MM else width)


COLUMN_MM = 120.0
"""Least width of a column of tables, mm."""


def column_count(sheet: SheetSize) -> int:
    """Columns of tables on the sheet, at least 1."""
    return max(1, int(_inner(sheet)[0] // COLUMN_MM))
