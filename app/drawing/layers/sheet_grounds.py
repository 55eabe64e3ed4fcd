"""The ground of liner sheets: full ones plain, trimmed ones hatched with the size to cut to under the number."""

from collections.abc import Iterator, Sequence

import numpy as np

from app.drawing.lettering import lettered, text_width_mm
from app.drawing.marks import NORMAL, SMALL, Areas, Mark, Text, box
from app.drawing.rings import areas_of
from app.drawing.scene import Scene
from app.drawing.styles import Style
from app.liner.label_places import label_places, lie_on
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
    half, middles = scene.mm(0.55 * SMALL), label_places(trimmed)
    words = [_words(sheet, scene.unit) for sheet in trimmed]
    room = np.array([scene.mm(text_width_mm(said, SMALL)) / 2 for said in words])
    x, y = middles[:, 0], middles[:, 1] - scene.mm(1.15 * NORMAL)
    boxes = np.column_stack([x - room, y - half, x + room, y + half])
    for k in np.flatnonzero(lie_on(trimmed, boxes)).tolist():
        left, low, right, high = boxes[k].tolist()
        yield box(left, low, right - left, high - low, "label")
        yield Text(float(x[k]), float(y[k]), words[k], "text sheet", SMALL)


def _words(sheet: Sheet, unit: str) -> str:
    points = np.array([point for ring in sheet.trim for point in ring])
    wide, high = np.ptp(points, axis=0).tolist()
    return f"{lettered(wide, unit)} x {lettered(high, unit)}"
