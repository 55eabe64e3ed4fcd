"""Checkpoints: a ring with letter and number where the tape is read, below the tape and at the panel's right."""

from collections.abc import Iterator

from app.drawing.layers import tape
from app.drawing.layers.dimensions import LEADER_MM, RING_MM
from app.drawing.marks import SMALL, Circle, Mark, Text, segments
from app.drawing.running import along_tape, up_side
from app.drawing.scene import Scene

FRAME = "view"

SIDE_MM = 2.0
"""From the panel to the leaders at its right, mm."""

INTO_MM = 2.5
"""How far a checkpoint's line reaches over the panel's edge, mm."""


def marks(scene: Scene) -> Iterator[Mark]:
    """Rings in line with the running dimensions; none without drift."""
    below = [label for label in along_tape(scene) if label.ring]
    y = -scene.mm(tape.FAR_MM + LEADER_MM + RING_MM)
    yield segments([(one.at, 0, one.at, scene.mm(INTO_MM)) for one in below], "tick")
    for label in below:
        yield from _ring(label.place, y, label.ring)
    beside = up_side(scene)
    edge, near, far = (scene.width + scene.mm(mm) for mm in (-INTO_MM, SIDE_MM, SIDE_MM + LEADER_MM))
    yield segments([(edge, one.at, near, one.at) for one in beside], "tick")
    yield segments([(near, one.at, far, one.place) for one in beside], "rule")
    for label in beside:
        yield from _ring(far + scene.mm(RING_MM), label.place, label.ring)
        yield Text(far + scene.mm(2 * RING_MM + 0.8), label.place, label.words, "text", SMALL, "start")


def _ring(x: float, y: float, words: str) -> Iterator[Mark]:
    yield Circle(x, y, RING_MM, "checkpoint")
    yield Text(x, y, words, "text strong", SMALL if len(words) < 3 else 0.8 * SMALL)
