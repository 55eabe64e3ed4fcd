"""Running dimensions of a view, from one datum, placed so that none stands on another.

Each is rounded by itself from the datum; no label is the sum of others.
"""

from dataclasses import dataclass

from app.drawing.controls import across, up
from app.drawing.declutter import spread, that_fit
from app.drawing.lettering import lettered
from app.drawing.scene import Scene
from app.panel.tolerance import TOLERANCE

APART_MM, RING_APART_MM = 3.1, 6.2
"""Room of one label, and of one with a checkpoint's ring, mm."""


@dataclass(frozen=True, slots=True)
class Running:
    """A label for the line `at`, standing at `place`, both inches in the view; `ring` is a checkpoint's mark or ""."""

    at: float
    place: float
    words: str
    ring: str = ""


@dataclass(frozen=True, slots=True)
class _Wanted:
    at: float
    words: str
    rank: int
    ring: str = ""


def along_tape(scene: Scene) -> tuple[Running, ...]:
    """Edges, jambs, strips and checkpoints along the tape, left to right; edges and checkpoints are never left out."""
    lines = [_Wanted(scene.across(line.at), "", line.what != "edge") for line in across(scene.layout.panel)]
    lines += [_Wanted(scene.across(point.position), "", 0, point.mark) for point in scene.checkpoints("x")]
    labels = [_Wanted(one.at, lettered(scene.along(one.at), scene.unit), one.rank, one.ring) for one in lines]
    return _placed(scene, labels, scene.width)


def up_pole(scene: Scene) -> tuple[Running, ...]:
    """Edges, sills, heads and strips up the pole from the panel's foot."""
    lines = up(scene.layout.panel)
    labels = [_Wanted(line.at, lettered(line.at, scene.unit), line.what != "edge") for line in lines]
    return _placed(scene, labels, scene.height)


def up_side(scene: Scene) -> tuple[Running, ...]:
    """Checkpoints up the panel, as the tape reads them from its hook."""
    points = scene.checkpoints("y")
    labels = [_Wanted(point.position, lettered(point.nominal, scene.unit), 0, point.mark) for point in points]
    return _placed(scene, labels, scene.height)


def _placed(scene: Scene, labels: list[_Wanted], room: float) -> tuple[Running, ...]:
    ordered = _joined(sorted(labels, key=lambda label: label.at))
    sizes = [scene.mm(RING_APART_MM if label.ring else APART_MM) for label in ordered]
    kept = that_fit([label.rank for label in ordered], sizes, room + scene.mm(2 * APART_MM))
    chosen = [ordered[k] for k in kept]
    places = spread([label.at for label in chosen], [sizes[k] for k in kept])
    rows = zip(chosen, places, strict=True)
    return tuple(Running(label.at, place, label.words, label.ring) for label, place in rows)


def _joined(labels: list[_Wanted]) -> list[_Wanted]:
    """Labels of one line as one: the lowest rank, and the ring of a checkpoint there."""
    joined: list[_Wanted] = []
    for label in labels:
        if joined and label.at - joined[-1].at <= TOLERANCE:
            last = joined[-1]
            joined[-1] = _Wanted(last.at, last.words, min(last.rank, label.rank), last.ring or label.ring)
        else:
            joined.append(label)
    return joined
