"""The pole at the left edge: a tick a course, every third numbered; heads and sills as notches.

Met is a filled notch; missed is an open notch with the distance to the nearest joint written beside it.
"""

from collections.abc import Iterator

from app.drawing.controls import off_course, up
from app.drawing.lettering import lettered
from app.drawing.marks import SMALL, Mark, Text, area, box, segments
from app.drawing.scene import Scene

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
        if is_numbered:
            y = max(course.bottom, scene.mm(0.6 * SMALL))
            yield Text(far + scene.mm(LONG_TICK_MM + 0.5), y, str(course.course), "text", SMALL, "start")
    yield segments(ends, "rule")


def numbered_every(scene: Scene) -> int:
    """Courses between numbers so that they stand clear of each other."""
    gauge_mm = scene.layout.size.gauge / scene.mm(1)
    return next((every for every in EVERY if every * gauge_mm >= 1.3 * SMALL), EVERY[-1])


def _notches(scene: Scene, near: float) -> Iterator[Mark]:
    half, depth = scene.mm(NOTCH_MM / 2), scene.mm(NOTCH_MM)
    for control in up(scene.layout.panel):
        if control.what not in ("head", "sill") or not scene.layout.courses:
            continue
        off, y = off_course(scene.layout, control), control.at
        yield area([(near, y - half), (near, y + half), (near - depth, y)], "missed" if off else "met")
        if off:
            words = lettered(abs(off), scene.unit)
            yield Text(near - depth - scene.mm(0.6), y, words, "text attention", SMALL, "end")
