"""A story pole's words: heights of the numbered courses at its left, heads and sills with their misses at its right."""

from collections.abc import Iterator

from app.drawing.controls import Control, off_course, up
from app.drawing.declutter import spread
from app.drawing.layers.pole import FAR_MM, NEAR_MM, numbered_every
from app.drawing.lettering import lettered, lettered_miss
from app.drawing.marks import SMALL, Mark, Text, segments
from app.drawing.running import APART_MM
from app.drawing.scene import Scene

FRAME = "view"

LEADER_MM = 5.0


def marks(scene: Scene) -> Iterator[Mark]:
    """Heights from the panel's foot; the left column is empty for an empty field."""
    yield from _heights(scene)
    yield from _controls(scene)


def _heights(scene: Scene) -> Iterator[Mark]:
    every, x = numbered_every(scene), -scene.mm(FAR_MM + 1.2)
    for course in scene.layout.courses:
        if course.course % every == 0 and 0 <= course.bottom <= scene.height:
            yield Text(x, course.bottom, lettered(course.bottom, scene.unit), "text", SMALL, "end")


def _controls(scene: Scene) -> Iterator[Mark]:
    lines = up(scene.layout.panel)
    places = spread([line.at for line in lines], [scene.mm(APART_MM)] * len(lines))
    near, far = -scene.mm(NEAR_MM), scene.mm(LEADER_MM - NEAR_MM)
    yield segments([(near, line.at, far, place) for line, place in zip(lines, places, strict=True)], "rule")
    for line, place in zip(lines, places, strict=True):
        words = f"{lettered(line.at, scene.unit)}  {_name(scene, line)}"
        yield Text(far + scene.mm(0.8), place, f"{words}{_miss(scene, line)}", "text", SMALL, "start")


def _name(scene: Scene, line: Control) -> str:
    if line.what != "edge" or 0 < line.at < scene.height:
        return line.words
    return "top edge" if line.at else "foot of the panel"


def _miss(scene: Scene, line: Control) -> str:
    if line.what not in ("head", "sill") or not scene.layout.courses:
        return ""
    off = off_course(scene.layout, line)
    side = "above" if off > 0 else "below"
    return f": nearest joint {lettered_miss(off, scene.unit)} {side}" if off else ": on a joint"
