"""What the marks of lanes and of the pour mean."""

from collections.abc import Generator, Iterator

import numpy as np

from app.drawing.layers.key import HIGH_MM, WIDE_MM
from app.drawing.layers.pole import FAR_MM
from app.drawing.layers.pour import CROSS_MM, crosses
from app.drawing.layers.title import KEY_MM, TITLE_MM
from app.drawing.lettering import lettered, text_width_mm
from app.drawing.marks import SMALL, Mark, Text, box, segments
from app.drawing.scene import Scene
from app.site.lane_values import Lanes
from app.site.pour_values import Pour

FRAME = "view"


def marks(scene: Scene) -> Iterator[Mark]:
    """A line under the title for lanes, one for the pour; none without either."""
    left, y = -scene.mm(FAR_MM), -scene.mm(TITLE_MM + KEY_MM)
    if scene.lanes is not None:
        yield from _of_lanes(scene, scene.lanes, left, y)
        y -= scene.mm(2 * SMALL)
    if scene.pour is not None:
        yield from _of_pour(scene, scene.pour, left, y)


def _of_lanes(scene: Scene, lanes: Lanes, x: float, y: float) -> Iterator[Mark]:
    if not lanes.lanes:
        yield Text(x, y, "no lane: all brick is in reach of the form's edges", "text", SMALL, "start")
        return
    yield box(x, y - scene.mm(HIGH_MM) / 2, scene.mm(WIDE_MM), scene.mm(HIGH_MM), "lane")
    width, reach = lettered(lanes.width, scene.unit), lettered(lanes.reach, scene.unit)
    words = f"L1, L2 …: lane, {width}, kept open, filled in this order; reach {reach}"
    yield Text(x + scene.mm(WIDE_MM + 1), y, words, "text", SMALL, "start")


def _of_pour(scene: Scene, pour: Pour, x: float, y: float) -> Iterator[Mark]:
    wide, high = scene.mm(WIDE_MM), scene.mm(HIGH_MM)
    yield box(x, y - high / 2, wide, high, "first drop")
    x += yield from _said(scene, x, y, "first drop")
    yield segments([(x, y, x + wide, y)], "pour way")
    x += yield from _said(scene, x, y, "1, 2 …: bands in order; the stream comes from here")
    yield crosses(np.array([[x + wide / 2, y]]), scene.mm(CROSS_MM))
    apart = " x ".join(lettered(step, scene.unit) for step in pour.step)
    depth = "head: see finding" if pour.depth is None else f"head {lettered(pour.depth, scene.unit)} down"
    yield from _said(scene, x, y, f"vibrator, {apart}, {depth}")


def _said(scene: Scene, x: float, y: float, words: str) -> Generator[Mark, None, float]:
    """Words beside a sign; gives how far on the next sign stands, inches."""
    yield Text(x + scene.mm(WIDE_MM + 1), y, words, "text", SMALL, "start")
    return scene.mm(WIDE_MM + 5 + text_width_mm(words, SMALL))
