"""Openings with their marks and uses, strips, plates and fixing lines."""

from collections.abc import Iterator

import shapely

from app.drawing.lettering import lettered, text_width_mm
from app.drawing.marks import NORMAL, SMALL, Mark, Text, line
from app.drawing.rings import areas_of
from app.drawing.scene import Scene
from app.drawing.styles import Style
from app.panel.geometry import inches, openings_polygon, outline_polygon, shape_polygon, strip_polygon
from app.panel.shapes import Rect
from app.panel.values import Opening

FRAME = "face"

LINE_MM = 4.2
"""From one line of lettering to the next, mm."""


def marks(scene: Scene) -> Iterator[Mark]:
    """Every opening, strip, plate and fixing of the panel; none for a plain one."""
    panel = scene.layout.panel
    outline = outline_polygon(panel)
    for strip in panel.strips:
        yield areas_of(strip_polygon(inches(strip.line), strip.width.inches).intersection(outline), "strip")
    for plate in panel.plates:
        yield areas_of(shape_polygon(plate.shape), "plate")
    if panel.openings:
        yield areas_of(openings_polygon(panel), "opening")
    yield from lettering(scene)
    for fixing in panel.fixings:
        yield line(inches(fixing.line), "fixing")


def lettering(scene: Scene) -> Iterator[Text]:
    """Marks, uses and sizes of the openings and marks of the plates, as far as they fit."""
    for opening in scene.layout.panel.openings:
        yield from _words(scene, shape_polygon(opening.shape), _lines(scene, opening))
    for plate in scene.layout.panel.plates:
        yield from _words(scene, shape_polygon(plate.shape), [(plate.mark, "text", SMALL)])


def _lines(scene: Scene, opening: Opening) -> list[tuple[str, Style, float]]:
    lines: list[tuple[str, Style, float]] = [(opening.mark, "text strong", NORMAL)]
    lines += [(opening.use, "text quiet", SMALL)] if opening.use else []
    if isinstance(opening.shape, Rect):
        wide, high = (lettered(side.inches, scene.unit) for side in (opening.shape.width, opening.shape.height))
        lines.append((f"{wide} x {high}", "text quiet", SMALL))
    return lines


def _words(scene: Scene, shape: shapely.Polygon, lines: list[tuple[str, Style, float]]) -> Iterator[Text]:
    """As many of the lines as fit, the first at least, about the shape's middle."""
    x0, y0, x1, y1 = shape.bounds
    wide, high = (x1 - x0) / scene.mm(1), (y1 - y0) / scene.mm(1)
    rows = max(1, int(high / LINE_MM))
    kept = [row for n, row in enumerate(lines) if n == 0 or text_width_mm(row[0], row[2]) <= wide - 2][:rows]
    middle = shape.representative_point() if not shape.contains(shape.centroid) else shape.centroid
    for n, (text, style, size) in enumerate(kept):
        drop = scene.mm(LINE_MM) * (n - (len(kept) - 1) / 2)
        yield Text(middle.x, middle.y - drop, text, style, size)
