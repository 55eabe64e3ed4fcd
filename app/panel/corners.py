"""The corners of whatever in a panel has them, by the thing's key: what a hand can take hold of."""

from dataclasses import replace

from app.panel.faults import Fault, Refused
from app.panel.frame import reframed
from app.panel.marks import marked, replaced
from app.panel.shapes import Point, Polygon
from app.panel.values import Panel
from app.panel.wording import one_of, quoted

Corners = tuple[Point, ...]
KINDS = ("outline", "openings/…", "zones/…", "plates/…", "strips/…", "fixings/…")


def corners_of(panel: Panel, key: str) -> Corners:
    """Points of the outline ("outline"), a polygon ("openings/L1", "zones/S1") or a line ("strips/R1", "fixings/0").

    Raises Refused at "thing" for a key that names nothing, or a thing that has no corners of its own.
    """
    kind, _, name = key.partition("/")
    match kind:
        case "outline":
            return panel.outline
        case "openings":
            return _polygon(marked(panel.openings, name, "thing").shape, name)
        case "zones":
            return _polygon(marked(panel.zones, name, "thing").region, name)
        case "plates":
            return _polygon(marked(panel.plates, name, "thing").shape, name)
        case "strips":
            return marked(panel.strips, name, "thing").line
        case "fixings":
            return panel.fixings[_number(panel, name)].line
    raise Refused([Fault("thing", quoted(key), one_of(KINDS, key))])


def with_corners(panel: Panel, key: str, points: Corners) -> Panel:
    """The panel with those points instead of the thing's own; the frame follows the outline. Raises as `corners_of`."""
    kind, _, name = key.partition("/")
    corners_of(panel, key)
    match kind:
        case "outline":
            return reframed(replace(panel, outline=points))
        case "openings":
            opening = marked(panel.openings, name, "thing")
            moved = replace(opening, shape=Polygon(points))
            return replace(panel, openings=replaced(panel.openings, opening, moved))
        case "zones":
            zone = marked(panel.zones, name, "thing")
            return replace(panel, zones=replaced(panel.zones, zone, replace(zone, region=Polygon(points))))
        case "plates":
            plate = marked(panel.plates, name, "thing")
            return replace(panel, plates=replaced(panel.plates, plate, replace(plate, shape=Polygon(points))))
        case "strips":
            strip = marked(panel.strips, name, "thing")
            return replace(panel, strips=replaced(panel.strips, strip, replace(strip, line=points)))
    k = _number(panel, name)
    fixing = replace(panel.fixings[k], line=points)
    return replace(panel, fixings=(*panel.fixings[:k], fixing, *panel.fixings[k + 1 :]))


def is_closed(key: str) -> bool:
    """Whether the last corner is joined to the first: not in strips and fixing lines."""
    return not key.startswith(("strips/", "fixings/"))


def said_thing(key: str) -> str:
    """A thing by its mark, a fixing by its place from 1, as in the history."""
    kind, _, name = key.partition("/")
    return f"fixing {int(name) + 1}" if kind == "fixings" and _is_number(name) else name or kind


def corner(points: Corners, number: int, noun: str) -> int:
    """The number itself where there is a corner, or edge, of it; raises Refused at `noun`."""
    if 0 <= number < len(points):
        return number
    raise Refused([Fault(noun, f"{noun} {number}", f"{noun} 0 to {len(points) - 1}")])


def _polygon(shape: object, name: str) -> Corners:
    if isinstance(shape, Polygon):
        return shape.points
    raise Refused([Fault("thing", f"{name}, which is no polygon", "a polygon, a line or the outline")])


def _is_number(name: str) -> bool:
    return name.isascii() and name.isdigit() and len(name) < 10


def _number(panel: Panel, name: str) -> int:
    if _is_number(name) and int(name) < len(panel.fixings):
        return int(name)
    last = len(panel.fixings) - 1
    raise Refused(
        [Fault("thing", f"fixing {quoted(name)}", f"fixings 0 to {last}" if last >= 0 else "no fixing lines")]
    )
