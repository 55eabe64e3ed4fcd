"""Clouds around all that differs from the release before, each with a delta that bears the later one's letter."""

import itertools
from collections.abc import Iterator

import numpy as np

from app.brickwork.changed import changed_rings
from app.drawing.marks import LARGE, Floats, Mark, Text, area, line
from app.drawing.scene import Scene

FRAME = "face"

CHORD_MM = 5.0
"""Paper between two points of a cloud; each bulges outward by a good third of it."""

BULGE = 0.36
DELTA_MM = 8.0


def marks(scene: Scene) -> Iterator[Mark]:
    """None where nothing differs or no letter is given."""
    if scene.earlier is None or not scene.delta:
        return
    for ring in changed_rings(scene.earlier, scene.layout):
        outward = _clockwise(ring)
        yield line([tuple(point) for point in _cloud(outward, scene.mm(CHORD_MM))], "cloud")
        yield from _delta(outward, scene)


def _clockwise(ring: Floats) -> Floats:
    x, y = ring.T
    turns_left = float(x @ np.roll(y, -1) - y @ np.roll(x, -1)) > 0
    return ring[::-1] if turns_left else ring


def _cloud(ring: Floats, chord: float) -> Floats:
    """The ring as arcs that bulge outward: to the left of the way around a clockwise ring."""
    closed = np.vstack([ring, ring[:1]])
    sides = np.hypot(*np.diff(closed, axis=0).T)
    along = np.concatenate([[0.0], np.cumsum(sides)])
    count = max(6, round(along[-1] / chord))
    stations = np.linspace(0.0, along[-1], count + 1)
    points = np.column_stack([np.interp(stations, along, closed[:, axis]) for axis in (0, 1)])
    part = np.linspace(0.0, 1.0, 9)[:, None]
    arcs = [_arc(start, end, part) for start, end in itertools.pairwise(points)]
    return np.vstack([*(arc[:-1] for arc in arcs), points[-1:]])


def _arc(start: Floats, end: Floats, part: Floats) -> Floats:
    chord = end - start
    left = np.array([-chord[1], chord[0]])
    bulged: Floats = start + part * chord + np.sin(np.pi * part) * BULGE * left
    return bulged


def _delta(ring: Floats, scene: Scene) -> Iterator[Mark]:
    """A triangle at the cloud's upper right, on the drawing's own ground."""
    size = scene.mm(DELTA_MM)
    x = min(float(ring[:, 0].max()), scene.width - size / 2)
    y = min(float(ring[:, 1].max()), scene.height - size / 2)
    corners = [(x - size / 2, y - size / 3), (x + size / 2, y - size / 3), (x, y + size * 0.53)]
    yield area(corners, "delta")
    yield Text(x, y - size * 0.05, scene.delta, "text strong", LARGE * 0.8)
