"""The things in the drawing that can be chosen, moved and sized: their shapes in the face frame."""

import json
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from app.brickwork.layout import Layout
from app.brickwork.regions import zone_extent
from app.lengths import format_length
from app.panel.geometry import inches, shape_polygon
from app.panel.shapes import Rect, Shape
from app.panel.values import Opening, Panel, Zone

Points = list[tuple[float, float]]


@dataclass(frozen=True, slots=True)
class Thing:
    """One thing: its key as in `app.panel.things`, and how the drawing's script may change it.

    `box` is x, y, width, height in inches; `moves` and `sides` name the edits of a drag, `points` the corners of the
    outline.
    """

    key: str
    kind: str
    name: str
    mark: str
    words: str
    path: str
    box: str
    moves: str = ""
    sides: str = ""
    points: str = ""


def things_of(layout: Layout, unit: str) -> tuple[Thing, ...]:
    """The outline first, then zones, strips, fixings and openings: the last drawn is on top."""
    panel = layout.panel
    return (
        _outline(panel),
        *(_zone(layout, zone) for zone in panel.zones),
        *_lines(panel, unit),
        *(_opening(opening, panel.height, unit) for opening in panel.openings),
    )


def _outline(panel: Panel) -> Thing:
    points = list(panel.outline_inches)
    words = f"{len(points)} points"
    path, corners = _path(panel.height, points), json.dumps([[round(x, 6), round(y, 6)] for x, y in points])
    return Thing("outline", "is-outline", "Outline", panel.mark, words, path, _box(points), points=corners)


@lru_cache(maxsize=1024)
def _opening(opening: Opening, panel_height: float, unit: str) -> Thing:
    """Kept, as most openings stay as they are when one is edited."""
    ring = _ring(opening.shape)
    name = f"{opening.mark}, {opening.use}" if opening.use else opening.mark
    sides = "place_opening" if isinstance(opening.shape, Rect) else ""
    width, height = _size(ring)
    words = f"{format_length(width, unit)} x {format_length(height, unit)}"
    key, path = f"openings/{opening.mark}", _path(panel_height, ring)
    return Thing(key, "is-opening", name, opening.mark, words, path, _box(ring), "move_opening", sides)


def _zone(layout: Layout, zone: Zone) -> Thing:
    ring = _corners(zone_extent(zone, layout.lines, layout.size.gauge, layout.field))
    ring = ring or list(layout.panel.outline_inches)
    edit = "place_zone" if isinstance(zone.region, Rect) else ""
    name, key = f"{zone.mark}, {zone.work.bond}", f"zones/{zone.mark}"
    path = _path(layout.panel.height, ring)
    return Thing(key, "is-zone", name, zone.mark, zone.work.size, path, _box(ring), edit, edit)


def _lines(panel: Panel, unit: str) -> Iterator[Thing]:
    for strip in panel.strips:
        line, words = inches(strip.line), f"{format_length(strip.width, unit)} wide"
        key, path = f"strips/{strip.mark}", _path(panel.height, line, close="")
        yield Thing(key, "is-line", f"{strip.mark}, strip", strip.mark, words, path, _box(line))
    for k, fixing in enumerate(panel.fixings):
        line, key = inches(fixing.line), f"fixings/{k}"
        path = _path(panel.height, line, close="")
        yield Thing(key, "is-line", f"Fixing {k + 1}", str(k), fixing.by or "held", path, _box(line))


def _ring(shape: Shape) -> Points:
    return _corners(shape_polygon(shape))


def _corners(polygon: Any) -> Points:
    return [(float(x), float(y)) for x, y in polygon.exterior.coords][:-1]


def _path(panel_height: float, points: Points, close: str = "z") -> str:
    return "M" + "L".join(f"{x:.4f} {panel_height - y:.4f}" for x, y in points) + close


def _size(points: Points) -> tuple[float, float]:
    across, up = [x for x, _ in points], [y for _, y in points]
    return max(across) - min(across), max(up) - min(up)


def _box(points: Points) -> str:
    width, height = _size(points)
    return json.dumps([round(v, 6) for v in (min(x for x, _ in points), min(y for _, y in points), width, height)])
