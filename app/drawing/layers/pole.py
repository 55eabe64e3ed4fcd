"""The pole at the left edge: a tick a course, every third numbered; heads and sills as notches.

Met is a filled notch; missed is an open notch with the distance to the nearest joint written beside it.
"""

from collections.abc import Iterator

import numpy as np

from app.drawing.controls import off_course, up
from app.drawing.lettering import lettered_miss
from app.drawing.marks import SMALL, Areas, Mark, Text, box, segments
from app.drawing.scene import Scene
from app.drawing.styles import Style

FRAME = "view"

NEAR_MM, FAR_MM = 3.0, 23.0
"""The pole's two edges, mm left of the panel."""

NOTCH_MM = 2.6
TICK_MM, LONG_TICK_MM = 1.6, 2.8

EVERY = (3, 6, 12, 24, 48)
"""Courses from one number to the next: every third, or more where the scale is too small for that."""


def marks(scene: Scene) -> Iterator[Mark]:
    """The strip, its ticks and numbers, a notch for every head and sill; the bare strip for an empty field."""
    far, near = -scene.mm(FAR_MM), -scene.mm(NEAR_MM)
    yield box(far, 0, near - far, scene.height, "pole")
    yield from _courses(scene, far)
    yield from _notches(scene, near)


def _courses(scene: Scene, far: float) -> Iterator[Mark]:
    every = numbered_every(scene)
    shown = [course for course in scene.layout.courses if 0 <= course.bottom <= scene.height]
    ends = []
    for course in shown:
        is_numbered = course.course % every == 0
        reach = scene.mm(LONG_TICK_MM if is_numbered else TICK_MM)
        ends.append((far, course.bottom, far + reach, course.bottom))
        if is_numbered and course.bottom <= scene.height - scene.mm(0.5 * SMALL):
            y = max(course.bottom, scene.mm(0.6 * SMALL))
            yield Text(far + scene.mm(LONG_TICK_MM + 0.5), y, str(course.course), "text", SMALL, "start")
    yield segments(ends, "rule")


def numbered_every(scene: Scene) -> int:
    """Courses between numbers so that they stand clear of each other."""
    gauge_mm = scene.layout.size.gauge / scene.mm(1)
    return next((every for every in EVERY if every * gauge_mm >= 1.3 * SMALL), EVERY[-1])


def _notches(scene: Scene, near: float) -> Iterator[Mark]:
    controls = [line for line in up(scene.layout.panel) if line.what in ("head", "sill") and scene.layout.courses]
    offs = [off_course(scene.layout, line) for line in controls]
    yield _triangles(scene, near, [line.at for line, off in zip(controls, offs, strict=True) if not off], "met")
    yield _triangles(scene, near, [line.at for line, off in zip(controls, offs, strict=True) if off], "missed")
    for line, off in zip(controls, offs, strict=True):
        if off:
            words = lettered_miss(off, scene.unit)
            yield Text(near - scene.mm(NOTCH_MM + 0.6), line.at, words, "text attention", SMALL, "end")


def _triangles(scene: Scene, near: float, heights: list[float], style: Style) -> Areas:
    half, tip = scene.mm(NOTCH_MM / 2), near - scene.mm(NOTCH_MM)
    points = [point for y in heights for point in ((near, y - half), (near, y + half), (tip, y))]
    return Areas(np.array(points, dtype=float).reshape(-1, 2), np.full(len(heights), 3), style)
