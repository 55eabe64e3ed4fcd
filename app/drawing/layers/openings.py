"""Openings with their marks and uses, strips, plates and fixing lines."""

from collections.abc import Iterator
from functools import lru_cache

from app.drawing.lettering import fitting, lettered, text_width_mm
from app.drawing.marks import NORMAL, SMALL, Mark, Text, line
from app.drawing.rings import areas_of
from app.drawing.scene import Scene
from app.drawing.styles import Style
from app.panel.geometry import inches
from app.panel.rings import opening_rings, place_for_words, shape_rings, strip_rings
from app.panel.shapes import Rect, Shape
from app.panel.values import Opening

FRAME = "face"

LINE_MM = 4.2
"""From one line of lettering to the next, mm."""

LEAST_MM = 14.0
"""A mark this wide is written whole even over a small opening."""

WordLine = tuple[str, Style, float]
"""Text, style and size in mm."""


def marks(scene: Scene) -> Iterator[Mark]:
    """Every opening, strip, plate and fixing of the panel; none for a plain one."""
    panel = scene.layout.panel
    for strip in panel.strips:
        yield areas_of(strip_rings(panel, strip), "strip")
    for plate in panel.plates:
        yield areas_of(shape_rings(plate.shape), "plate")
    if panel.openings:
        yield areas_of(opening_rings(panel), "opening")
    yield from lettering(scene)
    for fixing in panel.fixings:
        yield line(inches(fixing.line), "fixing")


def lettering(scene: Scene) -> Iterator[Text]:
    """Marks, uses and sizes of the openings and marks of the plates, as far as they fit."""
    for opening in scene.layout.panel.openings:
        yield from _of_opening(opening, scene.unit, scene.mm(1))
    for plate in scene.layout.panel.plates:
        yield from _words(plate.shape, [(plate.mark, "text", SMALL)], scene.mm(1))


@lru_cache(maxsize=1024)
def _of_opening(opening: Opening, unit: str, mm: float) -> tuple[Text, ...]:
    """Kept, as most openings stay as they are when one is edited."""
    return tuple(_words(opening.shape, _lines(opening, unit), mm))


def _lines(opening: Opening, unit: str) -> list[WordLine]:
    lines: list[WordLine] = [(opening.mark, "text strong", NORMAL)]
    lines += [(opening.use, "text quiet", SMALL)] if opening.use else []
    if isinstance(opening.shape, Rect):
        wide, high = (lettered(side.inches, unit) for side in (opening.shape.width, opening.shape.height))
        lines.append((f"{wide} x {high}", "text quiet", SMALL))
    return lines


def _words(shape: Shape, lines: list[WordLine], mm: float) -> Iterator[Text]:
    """As many of the lines as fit, the first at least, about the shape's middle; `mm` of paper in inches of panel."""
    x, y, width, height = place_for_words(shape)
    wide, rows = width / mm - 2, max(1, int(height / (LINE_MM * mm)))
    (mark, style, size), *others = lines
    fit = [row for row in others if text_width_mm(row[0], row[2]) <= wide]
    kept = [(fitting(mark, max(wide, LEAST_MM), size), style, size), *fit][:rows]
    for n, (text, style, size) in enumerate(kept):
        yield Text(x, y - LINE_MM * mm * (n - (len(kept) - 1) / 2), text, style, size)
