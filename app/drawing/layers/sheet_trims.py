"""Trimmed sheets: hatched, with the size to cut to under the number."""

from collections.abc import Iterator

import numpy as np

from app.drawing.layers.sheets import number_places
from app.drawing.lettering import lettered, text_width_mm
from app.drawing.marks import NORMAL, SMALL, Areas, Mark, Text
from app.drawing.scene import Scene
from app.liner.values import Sheet

FRAME = "face"


def marks(scene: Scene) -> Iterator[Mark]:
    """The trimmed sheets as one mark, then their sizes where they fit; none without a plan."""
    trimmed = tuple(sheet for sheet in scene.plan.sheets if sheet.is_trimmed) if scene.plan else ()
    if not trimmed:
        return
    rings = [ring for sheet in trimmed for ring in (*sheet.trim, *sheet.holes)]
    points = np.array([point for ring in rings for point in ring], dtype=float).reshape(-1, 2)
    yield Areas(points, np.array([len(ring) for ring in rings], dtype=np.int64), "sheet trimmed")
    for sheet, (x, y) in zip(trimmed, number_places(trimmed).tolist(), strict=True):
        wide, high = _size(sheet)
        words = f"{lettered(wide, scene.unit)} x {lettered(high, scene.unit)}"
        if scene.mm(text_width_mm(words, SMALL)) <= wide and scene.mm(2.5 * NORMAL) <= high:
            yield Text(x, y - scene.mm(NORMAL), words, "text sheet", SMALL)


def _size(sheet: Sheet) -> tuple[float, float]:
    points = np.array([point for ring in sheet.trim for point in ring])
    wide, high = (points.max(axis=0) - points.min(axis=0)).tolist()
    return wide, high
