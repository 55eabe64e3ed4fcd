"""The tape along the bottom, from its hook end: feet or metres, and a tick at every line measured to."""

from collections.abc import Iterator
from math import floor

from app.drawing.controls import across
from app.drawing.marks import SMALL, Mark, Text, box, line, segments
from app.drawing.scene import Scene

FRAME = "view"

NEAR_MM, FAR_MM = 3.0, 9.0
"""The tape's two edges, mm below the panel."""

FOOT, DECIMETRE = 12.0, 100 / 25.4

STEPS = (1, 2, 5, 10, 20, 50)
"""Feet, or decimetres, from one number to the next: the first that leaves room."""

NUMBER_MM = 6.0


def marks(scene: Scene) -> Iterator[Mark]:
    """The strip with its hook, ticks every foot or decimetre, numbers as room allows, and jambs and edges."""
    near, far, clear = (-scene.mm(mm) for mm in (NEAR_MM, FAR_MM, 1.2))
    yield box(0, far, scene.width, near - far, "tape")
    yield from _graduations(scene, far)
    lines = [scene.across(control.at) for control in across(scene.layout.panel)]
    yield segments([(x, near, x, near - scene.mm(2.2)) for x in lines], "tick")
    hook = scene.along(0)
    over = scene.along(clear)
    yield line([(over, near - clear / 2), (hook, near - clear / 2), (hook, far)], "outline")


def _graduations(scene: Scene, far: float) -> Iterator[Mark]:
    step, unit = (DECIMETRE, "m") if scene.unit == "mm" else (FOOT, "ft")
    every = next((n for n in STEPS if n * step >= scene.mm(NUMBER_MM)), STEPS[-1])
    count = floor(scene.width / step + 1e-9)
    places = [scene.along(k * step) for k in range(count + 1)]
    yield segments([(x, far, x, far + scene.mm(1.4)) for x in places], "rule")
    for k in range(every, count + 1, every):
        if scene.width - k * step >= scene.mm(2):
            words = f"{k / 10:g}" if unit == "m" else f"{k}'"
            yield Text(places[k], far + scene.mm(2.6), words, "text quiet", SMALL)
