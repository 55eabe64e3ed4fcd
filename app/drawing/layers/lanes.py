"""Walking lanes: each an outlined, hatched strip with its mark, over the brick that waits for it."""

from collections.abc import Iterator

import numpy as np

from app.drawing.lettering import text_width_mm
from app.drawing.marks import NORMAL, Boxes, Mark, Text, box
from app.drawing.scene import Scene

FRAME = "face"

AIR_MM = 0.8
"""Around a mark on its ground, mm."""


def marks(scene: Scene) -> Iterator[Mark]:
    """All strips as one mark, then their marks on grounds of their own; none where nobody worked them out."""
    found = scene.lanes.lanes if scene.lanes else ()
    if not found:
        return
    strips = [lane.strip for lane in found]
    sides = np.array([(strip.x, strip.y, strip.width, strip.height) for strip in strips])
    x, y, width, height = sides.T
    yield Boxes(x, y, width, height, "lane")
    for lane in found:
        yield from labelled(scene, lane.at, lane.mark)


def labelled(scene: Scene, at: tuple[float, float], words: str) -> Iterator[Mark]:
    """Words upright on a ground that hides what they stand on."""
    wide, high = scene.mm(text_width_mm(words, NORMAL) + 2 * AIR_MM), scene.mm(NORMAL + AIR_MM)
    x, y = at
    yield box(x - wide / 2, y - high / 2, wide, high, "label")
    yield Text(x, y, words, "text strong", NORMAL)
