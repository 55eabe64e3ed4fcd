"""A sheet a wall: the whole wall drawn, and in words where its courses come from."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import groupby

from app.brickwork.wall import is_continuous
from app.documents.panel_results import PanelResults
from app.documents.submittal_packing import packed
from app.documents.submittal_paper import Placed, scales_for, wall_placed, wall_room
from app.documents.submittal_words import COUNTED, counts, in_words, size_words
from app.drawing.lettering import lettered, with_fractions
from app.drawing.scales import NoScaleFits, Scale, SheetSize, largest_scale
from app.drawing.svg import svg_document
from app.drawing.wall import AROUND, LAYERS, panel_places, wall_elevation
from app.panel.project import Wall
from app.panel.values import Panel

FAR_LAYERS = ("course_lines", "openings", "outline")
HEADS_MM, ROW_MM, LEAST_SPACE_MM = 6.0, 5.0, 3.0
"""Height of a table's heads and of a row, and the least space above and below it, mm."""

LEAST_MM = 1.0
"""A course lower than this on paper is not drawn brick by brick: its lines would run together."""


@dataclass(frozen=True, slots=True)
class WallSheet:
    """One wall's sheet: `facts` are labels and values, `alt` says in words what the drawing shows.

    `rows` are its panels in numbers, `table_y` where their table starts, mm from the sheet's top; None without room.
    """

    mark: str
    scale: str
    alt: str
    svg: str
    at: Placed
    facts: tuple[tuple[str, str], ...]
    rows: tuple[tuple[str, ...], ...]
    table_y: float | None


def wall_sheets(computed: Sequence[PanelResults], unit: str, sheet: SheetSize, palette: str) -> tuple[WallSheet, ...]:
    """A sheet for each wall that has panels, in their order; a wall too long for all scales is drawn to fit."""
    walls = groupby(computed, key=lambda results: results.wall.mark)
    return tuple(_wall_sheet(list(results), unit, sheet, palette) for _, results in walls)


def _wall_sheet(results: Sequence[PanelResults], unit: str, sheet: SheetSize, palette: str) -> WallSheet:
    wall, layouts = results[0].wall, [one.layout for one in results]
    scale = _scale(results, unit, sheet)
    layers = LAYERS if min(one.size.gauge for one in layouts) >= LEAST_MM * scale.inches_per_mm else FAR_LAYERS
    drawn = wall_elevation(layouts, wall, scale=scale, unit=unit, layers=layers)
    facts = wall_facts(wall, [one.panel for one in results], unit)
    rows = tuple(_panel_row(one, unit) for one in results)
    at, table_y = _places(wall_placed(drawn, sheet), len(rows), sheet)
    said = ". ".join(f"{label}: {value}" for label, value in facts)
    return WallSheet(
        mark=wall.mark,
        scale=with_fractions(scale.words),
        alt=f"{drawn.title}. {drawn.words}. Scale {scale.words}. {said}.",
        svg=packed(svg_document(drawn, palette)),
        at=at,
        facts=facts,
        rows=rows,
        table_y=table_y,
    )


def _panel_row(results: PanelResults, unit: str) -> tuple[str, ...]:
    """Mark, size, brick, and the panel's numbers as in the panel schedule."""
    panel, number = results.panel, in_words(counts(results))
    size = size_words(panel.width, panel.height, unit)
    return panel.mark, size, f"{panel.field.size}, {panel.field.bond}", *(number[name] for name in COUNTED)


def _places(middle: Placed, rows: int, sheet: SheetSize) -> tuple[Placed, float | None]:
    """The drawing and its table below, the space left shared out; the drawing in the middle where there is no room."""
    free, table = wall_room(sheet)[1] - middle.height, HEADS_MM + ROW_MM * rows
    space = (free - table) / 3
    if space < LEAST_SPACE_MM:
        return middle, None
    y = middle.y - free / 2 + space
    return replace(middle, y=y), y + middle.height + space


def _scale(results: Sequence[PanelResults], unit: str, sheet: SheetSize) -> Scale:
    places = panel_places([one.layout for one in results], results[0].wall)
    width = max(x + one.panel.width for one, (x, _) in zip(results, places, strict=True))
    height = max(y + one.panel.height for one, (_, y) in zip(results, places, strict=True))
    room = wall_room(sheet)
    try:
        return largest_scale(width, height, room, AROUND, scales_for(unit))
    except NoScaleFits:
        free = room[0] - AROUND.left - AROUND.right, room[1] - AROUND.bottom - AROUND.top
        return Scale(max(width / free[0], height / free[1]) * 25.4, "to fit the sheet")


def wall_facts(wall: Wall, panels: Sequence[Panel], unit: str) -> tuple[tuple[str, str], ...]:
    """Datum, joints, and which panels stand apart: released, with an origin or a base of their own."""
    released = [panel.mark for panel in panels if panel.released]
    own = [panel.mark for panel in panels if not panel.released and not is_continuous(panel)]
    bases = [f"{panel.mark} {lettered(panel.base.inches, unit)}" for panel in panels if panel.base.nm]
    facts = (
        ("Datum", f"{lettered(wall.datum.inches, unit)}; courses and bond run on through the panel joints"),
        ("Panel joints", lettered(wall.joint.inches, unit)),
        ("Released from the wall", ", ".join(released) or "None"),
        ("With an origin of their own", ", ".join(own)),
        ("Bases other than 0", ", ".join(bases)),
    )
    return tuple((label, value) for label, value in facts if value)
