"""Which way round and which way up: the top edge named, a mark with unequal legs at the face's upper left corner."""

from collections.abc import Iterator

from app.drawing.marks import SMALL, Mark, Text, area, segments
from app.drawing.scene import Scene

FRAME = "face"

TOP_EDGE = "TOP EDGE"

LONG_LEG_MM, SHORT_LEG_MM, CLEAR_MM = 9.0, 4.5, 1.2
DASH_MM, HALF_WORD_MM = 10.0, 7.5


def marks(scene: Scene) -> Iterator[Mark]:
    """Above the panel, outside it; mirrored with the panel in the bed view, the words upright."""
    foot = scene.height + scene.mm(CLEAR_MM)
    corner = [(0.0, foot), (scene.mm(LONG_LEG_MM), foot), (0.0, foot + scene.mm(SHORT_LEG_MM))]
    yield area(corner, "solid")
    middle, y = scene.width / 2, scene.height + scene.mm(CLEAR_MM + SHORT_LEG_MM + 2)
    inner, outer = scene.mm(HALF_WORD_MM), scene.mm(HALF_WORD_MM + DASH_MM)
    yield segments([(middle - outer, y, middle - inner, y), (middle + inner, y, middle + outer, y)], "tick")
    yield Text(middle, y, TOP_EDGE, "text strong", SMALL)
