"""Running dimensions from one datum: along the tape from its hook, up the pole from the panel's foot.

Each is rounded by itself from the datum; no label is the sum of others.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from app.drawing.controls import across, up
from app.drawing.declutter import spread, that_fit
from app.drawing.layers import pole, tape
from app.drawing.lettering import lettered
from app.drawing.marks import SMALL, Mark, Text, segments
from app.drawing.scene import Scene

FRAME = "view"

APART_MM = 3.1
"""From the middle of one label to the next, mm."""

LEADER_MM = 2.4


@dataclass(frozen=True, slots=True)
class _Label:
    at: float
    words: str
    rank: int


def marks(scene: Scene) -> Iterator[Mark]:
    """Labels below the tape, standing, and left of the pole, lying; crowded ones moved apart with a leader."""
    yield from _along(scene)
    yield from _upwards(scene)


def _along(scene: Scene) -> Iterator[Mark]:
    xs = {round(scene.across(control.at), 6) for control in across(scene.layout.panel)}
    labels = _chosen([_Label(x, lettered(x, scene.unit), 0) for x in xs], scene, scene.width)
    places = spread([label.at for label in labels], scene.mm(APART_MM))
    top, foot = -scene.mm(tape.FAR_MM), -scene.mm(tape.FAR_MM + LEADER_MM)
    yield segments([(label.at, top, x, foot) for label, x in zip(labels, places, strict=True)], "rule")
    for label, x in zip(labels, places, strict=True):
        yield Text(x, foot - scene.mm(0.8), label.words, "text", SMALL, "end", 90)


def _upwards(scene: Scene) -> Iterator[Mark]:
    ys = {round(control.at, 6) for control in up(scene.layout.panel)}
    labels = _chosen([_Label(y, lettered(y, scene.unit), 0) for y in ys], scene, scene.height)
    places = spread([label.at for label in labels], scene.mm(APART_MM))
    near, far = -scene.mm(pole.FAR_MM), -scene.mm(pole.FAR_MM + LEADER_MM)
    yield segments([(near, label.at, far, y) for label, y in zip(labels, places, strict=True)], "rule")
    for label, y in zip(labels, places, strict=True):
        yield Text(far - scene.mm(0.6), y, label.words, "text", SMALL, "end")


def _chosen(labels: list[_Label], scene: Scene, room: float) -> list[_Label]:
    ordered = sorted(labels, key=lambda label: label.at)
    kept = that_fit([label.rank for label in ordered], room + scene.mm(2 * APART_MM), scene.mm(APART_MM))
    return [ordered[k] for k in kept]
