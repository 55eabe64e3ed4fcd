"""Openings, zones, plates, strips and fixing lines as rows of a table: read, put into a panel, written back as typed.

Columns: kind, mark, use (of a zone its bond, of a fixing what holds it), shape, x, y, width, height, and `more`: the
rise of an arch, the radius of a circle, the points of a polygon or a line, of a band its first course and how many.
"""

from collections.abc import Iterator
from dataclasses import dataclass, fields, is_dataclass, replace
from typing import Any, TypeVar

from app.lengths import Length, format_length
from app.panel.faults import Fault, Refused
from app.panel.form import Form
from app.panel.form_shapes import opening_shape, plate_shape, zone_region
from app.panel.marks import free_mark, opening_letter
from app.panel.shapes import Arch, Circle, Point, Polygon, Rect, Shape
from app.panel.values import Band, Brickwork, Fixing, Opening, Panel, Plate, Strip, Zone
from app.panel.wording import one_of, quoted

COLUMNS = ("kind", "mark", "use", "shape", "x", "y", "width", "height", "more")
KINDS = ("opening", "zone", "plate", "strip", "fixing")
_MORE = {"arch": "rise", "circle": "radius", "polygon": "points", "band": "course"}

Item = TypeVar("Item", Opening, Zone, Plate, Strip)


@dataclass(frozen=True, slots=True)
class Row:
    """One thing as it is to be; of a fixing `number` is its place in the list, None for one more."""

    item: Opening | Zone | Plate | Strip | Fixing
    number: int | None = None


def read_row(form: Form) -> Row | None:
    """The thing that a row's cells say; what is wrong is noted in the form with the column's name as path."""
    kind = (form.optional_text("kind") or "opening").casefold()
    cells = Form({**form.values, **_spread(form)}, form.unit, form.sizes, form.bonds)
    row = _read(kind, cells)
    form.faults += [replace(fault, path=_column(fault.path)) for fault in cells.faults]
    return row


def put(panel: Panel, row: Row, old: str = "") -> Panel:
    """The panel with the row's thing in place of the one called `old`, or of its own mark, or added to the others.

    A blank mark is the old one or the next that is free; a new zone is laid in the field's brick.
    """
    item = row.item
    if isinstance(item, Opening):
        return replace(panel, openings=_put(panel.openings, item, old or item.mark, opening_letter(item.use)))
    if isinstance(item, Zone):
        return replace(panel, zones=_put(panel.zones, _worked(item, panel, old), old or item.mark, "Z"))
    if isinstance(item, Plate):
        return replace(panel, plates=_put(panel.plates, item, old or item.mark, "P"))
    if isinstance(item, Strip):
        return replace(panel, strips=_put(panel.strips, item, old or item.mark, "R"))
    k = _place(panel, row, old)
    item = as_typed(panel.fixings[k], item) if k < len(panel.fixings) else item
    return replace(panel, fixings=(*panel.fixings[:k], item, *panel.fixings[k + 1 :]))


def _place(panel: Panel, row: Row, old: str) -> int:
    """Where in the list a fixing belongs: where it is already, at the number given, or behind the others."""
    count = len(panel.fixings)
    own = int(old) if old.isascii() and old.isdigit() else None
    if own is not None and row.number not in (None, own):
        raise Refused([Fault("mark", str((row.number or 0) + 1), f"{own + 1}: a fixing keeps its place in the list")])
    k = own if own is not None else count if row.number is None else row.number
    if not 0 <= k <= count:
        raise Refused([Fault("mark", str(k + 1), f"a fixing from 1 to {count}, or none for one more")])
    return k


def is_known(panel: Panel, row: Row) -> bool:
    """Whether the row changes a thing that is there."""
    if isinstance(row.item, Fixing):
        return row.number is not None
    marks = (
        *(("opening", one.mark) for one in panel.openings),
        *(("zone", one.mark) for one in panel.zones),
        *(("plate", one.mark) for one in panel.plates),
        *(("strip", one.mark) for one in panel.strips),
    )
    return (type(row.item).__name__.lower(), row.item.mark) in marks


def written(panel: Panel, unit: str) -> Iterator[tuple[str, ...]]:
    """Every thing of the panel as cells, lengths as typed or exact: read again they give the same things."""
    for opening in panel.openings:
        yield ("opening", opening.mark, opening.use or "", *_shape(opening.shape, unit))
    for zone in panel.zones:
        yield ("zone", zone.mark, zone.work.bond, *_shape(zone.region, unit))
    for plate in panel.plates:
        yield ("plate", plate.mark, "", *_shape(plate.shape, unit))
    for strip in panel.strips:
        yield ("strip", strip.mark, "", "line", "", "", exact(strip.width, unit), "", _points(strip.line, unit))
    for k, fixing in enumerate(panel.fixings):
        yield ("fixing", str(k + 1), fixing.by or "", "line", "", "", "", "", _points(fixing.line, unit))


def exact(length: Length, unit: str) -> str:
    """A length as typed, else in words where they say it to the full, else as a number with its unit."""
    if isinstance(length.typed, str):
        return length.typed
    words = format_length(length, unit)
    if not words.startswith("≈"):
        return words
    number = f"{length.millimetres:.6f}" if unit == "mm" else f"{length.inches:.8f}"
    return f"{number.rstrip('0').rstrip('.')} {unit}"


def _read(kind: str, cells: Form) -> Row | None:
    mark = cells.optional_text("mark") or ""
    match kind:
        case "opening":
            return Row(Opening(mark, opening_shape(cells), cells.optional_text("use")))
        case "zone":
            return Row(Zone(mark, zone_region(cells), Brickwork("", cells.choice("use", cells.bonds))))
        case "plate":
            return Row(Plate(mark, plate_shape(cells)))
        case "strip":
            return Row(Strip(mark, cells.points("points"), cells.length("width")))
        case "fixing":
            number = cells.number("mark") - 1 if mark else None
            return Row(Fixing(cells.points("points"), cells.optional_text("use")), number)
    cells.faults.append(Fault("kind", quoted(kind), one_of(KINDS, kind)))
    return None


def _spread(form: Form) -> dict[str, str]:
    """The cell `more` as the fields that shapes are read from."""
    more, shape = form.values.get("more", ""), (form.optional_text("shape") or "rect").casefold()
    course, _, courses = more.partition(",")
    spread = {"shape": shape, "rise": more, "radius": more, "points": more}
    return spread | {"course": course.strip(), "courses": courses.strip() or "1"}


def _column(path: str) -> str:
    return "more" if path in ("rise", "radius", "points", "course", "courses") else path


def _put(items: tuple[Item, ...], item: Item, old: str, letter: str) -> tuple[Item, ...]:
    if not any(one.mark == old for one in items):
        added: tuple[Item, ...] = (replace(item, mark=item.mark or free_mark(letter, items)),)
        return items + added
    return tuple(_kept(one, item) if one.mark == old else one for one in items)


def _kept(one: Item, item: Item) -> Item:
    """What a table does not show stays, as how brick ends at a rectangle's sides; equal lengths stay as typed."""
    named: Item = as_typed(one, replace(item, mark=item.mark or one.mark))
    if isinstance(one, Opening) and isinstance(named, Opening) and isinstance(named.shape, Rect):
        return replace(named, sides=one.sides)
    return named


def as_typed(old: Any, new: Any) -> Any:
    """The new value with every length that is the old one in the very words of the old."""
    if isinstance(old, Length) and isinstance(new, Length):
        return old if old.nm == new.nm else new
    if type(old) is not type(new):
        return new
    if isinstance(new, tuple) and len(old) == len(new):
        return tuple(as_typed(one, other) for one, other in zip(old, new, strict=True))
    if is_dataclass(new) and not isinstance(new, type):
        parts = {part.name: as_typed(getattr(old, part.name), getattr(new, part.name)) for part in fields(new)}
        return replace(new, **parts)
    return new


def _worked(zone: Zone, panel: Panel, old: str) -> Zone:
    """A zone that is there keeps its brick, and its start while the bond is the same."""
    known = next((one for one in panel.zones if one.mark == (old or zone.mark)), None)
    if known is None:
        return replace(zone, work=Brickwork(panel.field.size, zone.work.bond))
    origin = known.work.origin if known.work.bond == zone.work.bond else None
    return replace(zone, work=Brickwork(known.work.size, zone.work.bond, origin))


def _shape(shape: Shape | Band, unit: str) -> tuple[str, ...]:
    match shape:
        case Rect():
            return ("rect", *_box(shape, unit), "")
        case Arch(rise=rise):
            return ("arch", *_box(shape, unit), exact(rise, unit))
        case Circle(radius=radius):
            return ("circle", exact(shape.x, unit), exact(shape.y, unit), "", "", exact(radius, unit))
        case Polygon(points=points):
            return ("polygon", "", "", "", "", _points(points, unit))
        case Band(course=course, courses=courses):
            return ("band", "", "", "", "", f"{course}, {courses}")


def _box(box: Rect | Arch, unit: str) -> tuple[str, ...]:
    return tuple(exact(length, unit) for length in (box.x, box.y, box.width, box.height))


def _points(points: tuple[Point, ...], unit: str) -> str:
    return "; ".join(f"{exact(x, unit)}, {exact(y, unit)}" for x, y in points)
