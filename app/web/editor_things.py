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
from app.panel.shapes import Arch, Circle, Point, Polygon, Rect, Shape
from app.panel.values import Band, Opening, Panel, Plate, Zone

Points = list[tuple[float, float]]


@dataclass(frozen=True, slots=True)
class Thing:
    """One thing: its key as in `app.panel.things`, and how the drawing's script may change it.

    `box` is x, y, width, height in inches; `moves`, `sides` and `bends` name the edits of a drag of the whole, of a
    side and of one of its `points`; `rise` is that of an arch, `is_round` a circle.
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
    bends: str = ""
    rise: str = ""
    is_round: bool = False


def things_of(layout: Layout, unit: str) -> tuple[Thing, ...]:
    """The outline first, then zones, strips, fixings, plates and openings: the last drawn is on top."""
    panel = layout.panel
    return (
        _outline(panel),
        *(_zone(layout, zone) for zone in panel.zones),
        *_lines(panel, unit),
        *(_plate(plate, panel.height, unit) for plate in panel.plates),
        *(_opening(opening, panel.height, unit) for opening in panel.openings),
    )


def _outline(panel: Panel) -> Thing:
    points = list(panel.outline_inches)
    words = f"{len(points)} points"
    path = _path(panel.height, points)
    corners = _rounded(points)
    return Thing(
        "outline", "is-outline", "Outline", panel.mark, words, path, _box(points), points=corners, bends="move_point"
    )


@lru_cache(maxsize=1024)
def _opening(opening: Opening, panel_height: float, unit: str) -> Thing:
    """Kept, as most openings stay as they are when one is edited."""
    ring = _ring(opening.shape)
    name = f"{opening.mark}, {opening.use}" if opening.use else opening.mark
    width, height = _size(ring)
    words = f"{format_length(width, unit)} x {format_length(height, unit)}"
    key, path = f"openings/{opening.mark}", _path(panel_height, ring)
    held = _held(opening.shape)
    return Thing(key, "is-opening", name, opening.mark, words, path, _box(ring), "move_opening", **held)


def _held(shape: Shape) -> dict[str, Any]:
    """How a shape can be taken hold of."""
    match shape:
        case Rect():
            return {"sides": "place_opening"}
        case Arch(rise=rise):
            return {"sides": "reshape_opening", "rise": f"{rise.inches:.6f}"}
        case Circle():
            return {"sides": "reshape_opening", "is_round": True}
        case Polygon(points=points):
            return _bent(points)


def _bent(points: tuple[Point, ...]) -> dict[str, Any]:
    return {"points": _rounded(inches(points)), "bends": "move_corner"}


def _zone(layout: Layout, zone: Zone) -> Thing:
    ring = _corners(zone_extent(zone, layout.lines, layout.size.gauge, layout.field))
    ring = ring or list(layout.panel.outline_inches)
    moves = "" if isinstance(zone.region, Band) else "move_zone"
    sides = "place_zone" if isinstance(zone.region, Rect) else ""
    bent = _bent(zone.region.points) if isinstance(zone.region, Polygon) else {}
    name, key = f"{zone.mark}, {zone.work.bond}", f"zones/{zone.mark}"
    path = _path(layout.panel.height, ring)
    return Thing(key, "is-zone", name, zone.mark, zone.work.size, path, _box(ring), moves, sides, **bent)


@lru_cache(maxsize=256)
def _plate(plate: Plate, panel_height: float, unit: str) -> Thing:
    ring, held = _ring(plate.shape), _held(plate.shape)
    width, height = _size(ring)
    words = f"{format_length(width, unit)} x {format_length(height, unit)}"
    if "sides" in held:
        held = {"sides": "place_plate"}
    key, path = f"plates/{plate.mark}", _path(panel_height, ring)
    return Thing(key, "is-plate", f"{plate.mark}, plate", plate.mark, words, path, _box(ring), "move_plate", **held)


def _lines(panel: Panel, unit: str) -> Iterator[Thing]:
    for strip in panel.strips:
        line, words = inches(strip.line), f"{format_length(strip.width, unit)} wide"
        key, path = f"strips/{strip.mark}", _path(panel.height, line, close="")
        bent = _bent(strip.line)
        yield Thing(key, "is-line", f"{strip.mark}, strip", strip.mark, words, path, _box(line), "move_line", **bent)
    for k, fixing in enumerate(panel.fixings):
        line, key = inches(fixing.line), f"fixings/{k}"
        path = _path(panel.height, line, close="")
        by, bent = fixing.by or "held", _bent(fixing.line)
        yield Thing(key, "is-line", f"Fixing {k + 1}", str(k), by, path, _box(line), "move_line", **bent)


def _rounded(points: Points) -> str:
    return json.dumps([[round(x, 6), round(y, 6)] for x, y in points])


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
