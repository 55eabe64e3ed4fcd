"""The ground of liner sheets: full ones plain, trimmed ones hatched with the size to cut to under the number."""

from collections.abc import Iterator, Sequence

import numpy as np

from app.drawing.lettering import lettered, text_width_mm
from app.drawing.marks import NORMAL, SMALL, Areas, Mark, Text, box
from app.drawing.rings import areas_of
from app.drawing.scene import Scene
from app.drawing.styles import Style
from app.liner.label_places import has_room, label_places
from app.liner.values import Sheet

FRAME = "face"


def marks(scene: Scene) -> Iterator[Mark]:
    """One mark for the full sheets, one for the trimmed, then the sizes that fit; none without a plan."""
    sheets = scene.plan.sheets if scene.plan else ()
    trimmed = tuple(sheet for sheet in sheets if sheet.is_trimmed)
    yield _grounds([sheet for sheet in sheets if not sheet.is_trimmed], "sheet full")
    yield _grounds(trimmed, "sheet trimmed")
    if trimmed:
        yield from _sizes(scene, trimmed)


def _grounds(sheets: Sequence[Sheet], style: Style) -> Areas:
    return areas_of([np.asarray(ring) for sheet in sheets for ring in (*sheet.trim, *sheet.holes)], style)


def _sizes(scene: Scene, trimmed: tuple[Sheet, ...]) -> Iterator[Mark]:
    """Width and height to cut to, where they fit on the sheet under its number."""
    half = scene.mm(0.55 * SMALL)
    for sheet, (x, y) in zip(trimmed, label_places(trimmed).tolist(), strict=True):
        points = np.array([point for ring in sheet.trim for point in ring])
        wide, high = (points.max(axis=0) - points.min(axis=0)).tolist()
        words = f"{lettered(wide, scene.unit)} x {lettered(high, scene.unit)}"
        room, level = scene.mm(text_width_mm(words, SMALL)), y - scene.mm(1.15 * NORMAL)
        if has_room(sheet, x - room / 2, level - half, x + room / 2, level + half):
            yield box(x - room / 2, level - half, room, 2 * half, "label")
            yield Text(x, level, words, "text sheet", SMALL)
