"""Running dimensions from one datum: along the tape from its hook, up the pole from the panel's foot."""

from collections.abc import Iterator

from app.drawing.layers import pole, tape
from app.drawing.marks import SMALL, Mark, Text, segments
from app.drawing.running import along_tape, up_pole
from app.drawing.scene import Scene

FRAME = "view"

LEADER_MM = 2.4

RING_MM = 2.5
"""Radius of a checkpoint's ring, mm: a letter and two figures."""


def marks(scene: Scene) -> Iterator[Mark]:
    """Labels below the tape, standing, and left of the pole, lying; crowded ones moved apart with a leader."""
    yield from _along(scene)
    yield from _upwards(scene)


def _along(scene: Scene) -> Iterator[Mark]:
    labels = along_tape(scene)
    top, foot = -scene.mm(tape.FAR_MM), -scene.mm(tape.FAR_MM + LEADER_MM)
    yield segments([(label.at, top, label.place, foot) for label in labels], "rule")
    has_rings = any(label.ring for label in labels)
    y = foot - scene.mm(2 * RING_MM + 0.6 if has_rings else 0.6)
    if has_rings:
        yield segments([(label.place, foot, label.place, y) for label in labels if not label.ring], "rule")
    for label in labels:
        yield Text(label.place, y - scene.mm(0.6), label.words, "text", SMALL, "end", 90)


def _upwards(scene: Scene) -> Iterator[Mark]:
    near, far = -scene.mm(pole.FAR_MM), -scene.mm(pole.FAR_MM + LEADER_MM)
    labels = up_pole(scene)
    yield segments([(near, label.at, far, label.place) for label in labels], "rule")
    for label in labels:
        yield Text(far - scene.mm(0.6), label.place, label.words, "text", SMALL, "end")
