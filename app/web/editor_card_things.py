"""The cards of the things of a panel: an opening, a zone, a strip, a fixing, the outline."""

from dataclasses import replace

from app.panel.edits import edit_from
from app.panel.shapes import Arch, Circle, Polygon, Rect, Shape
from app.panel.values import Band, Fixing, Opening, Panel, Plate, Strip, Zone
from app.web.editor_card_ends import edge_form, side_form
from app.web.editor_card_panel import HELD_BY, USES, bond_form, origin_form
from app.web.editor_card_several import copy_form, grid_form, mirror_form
from app.web.editor_cards import Card, CardForm, Draw, Field, Stock, choice_field, length_field, points_text
from app.web.editor_edges import edge_words

Hidden = tuple[tuple[str, str], ...]


def opening_card(panel: Panel, opening: Opening, stock: Stock) -> Card:
    """Place and size, mark and use, how the brick ends at its sides, the soldier band over it, removal."""
    unit = stock.unit
    hidden = (("opening", opening.mark),)
    named = (
        Field("mark", "Mark", opening.mark),
        choice_field("use", "Use", opening.use or "", _uses(opening), wide=False),
    )
    band = edit_from("soldier_band", dict(hidden), unit, stock.sizes).why_not(panel, unit)
    return Card(
        title=f"{opening.mark}, {opening.use}" if opening.use else opening.mark,
        words="",
        forms=(
            _shape_form("place_opening", opening.shape, hidden, unit),
            CardForm("rename_opening", "Rename", named, hidden),
            side_form(opening, hidden, unit).under("How the brick ends at its sides"),
            copy_form((("marks", opening.mark),)).under("Copy with spacing"),
            grid_form(opening.mark).under("Repeat in a grid"),
            mirror_form((("marks", opening.mark),)).under("Mirror"),
            CardForm("soldier_band", "Soldier band over it", hidden=hidden, why_not=band),
            CardForm("remove_opening", f"Remove {opening.mark}", hidden=hidden, remove=True),
        ),
    )


def zone_card(panel: Panel, zone: Zone, stock: Stock) -> Card:
    """Region, brick and bond, start, its place among the zones, removal."""
    unit = stock.unit
    hidden = (("zone", zone.mark),)
    region = zone.region
    return Card(
        title=f"Zone {zone.mark}",
        words="",
        forms=(
            _band_form(region, hidden) if isinstance(region, Band) else _shape_form("place_zone", region, hidden, unit),
            bond_form(zone.mark, zone.work, stock),
            origin_form(zone.mark, zone.work, unit).under("Where the bond starts"),
            *_order_forms(panel, hidden, unit),
            CardForm("remove_zone", f"Remove {zone.mark}", hidden=hidden, remove=True),
        ),
    )


def strip_card(strip: Strip, unit: str) -> Card:
    """Line and width, removal."""
    hidden = (("strip", strip.mark),)
    fields = (
        Field("line", "Line: x, y; x, y", points_text(strip.line, unit), wide=True),
        length_field("width", "Width", strip.width, unit),
        Field("mark", "Mark", strip.mark),
    )
    remove = CardForm("remove_strip", f"Remove {strip.mark}", hidden=hidden, remove=True)
    return Card(f"Strip {strip.mark}", "", (CardForm("place_strip", "Set", fields, hidden), remove))


def plate_card(plate: Plate, unit: str) -> Card:
    """Place and size, mark, removal."""
    hidden = (("plate", plate.mark),)
    shape = _shape_form("place_plate", plate.shape, hidden, unit)
    named = replace(shape, fields=(*shape.fields, Field("mark", "Mark", plate.mark)))
    remove = CardForm("remove_plate", f"Remove {plate.mark}", hidden=hidden, remove=True)
    return Card(f"Plate {plate.mark}", "Flush with the face: no brick over it.", (named, remove))


def fixing_card(k: int, fixing: Fixing, unit: str) -> Card:
    """Where the liner is held and by what, removal."""
    hidden = (("fixing", str(k)),)
    fields = (
        Field("line", "Line: x, y; x, y", points_text(fixing.line, unit), wide=True),
        choice_field("by", "Held by", fixing.by or "", _means(fixing)),
    )
    remove = CardForm("remove_fixing", f"Remove fixing {k + 1}", hidden=hidden, remove=True)
    return Card(f"Fixing {k + 1}", "", (CardForm("place_fixing", "Set", fields, hidden), remove))


def outline_card(panel: Panel, unit: str) -> Card:
    """Every corner, by number as in the drawing."""
    points = Field("points", "Points: x, y; x, y", points_text(panel.outline, unit), wide=True)
    width = Field("width", "Width")
    height = Field("height", "Height")
    draw = Draw("set_outline", "{}", "Drag from the lower left corner to the upper right", "Draw it")
    count = len(panel.outline)
    edge = choice_field("edge", "Edge", "0", [(str(k), edge_words(panel, k)) for k in range(count)], wide=False)
    point = choice_field("point", "Point", "0", [(str(k), f"point {k}") for k in range(count)], wide=False)
    place = (Field("x", "Across", holder="the middle"), Field("y", "Up", holder="the middle"))
    return Card(
        title="Outline",
        words="Drag a corner, or type.",
        forms=(
            CardForm("set_outline", "Set points", (points,)),
            CardForm("set_outline", "Set rectangle", (width, height), draw=draw).under("Make it a rectangle"),
            CardForm("add_point", "Add point", (edge, *place)).under("Add a point on an edge"),
            CardForm("remove_point", "Remove point", (point,)).under("Remove a point"),
            edge_form(panel, edge, unit).under("How the brick ends at an edge"),
        ),
    )


def _order_forms(panel: Panel, hidden: Hidden, unit: str) -> tuple[CardForm, ...]:
    """One zone over another is laid; nothing to say where there is but one."""
    if len(panel.zones) < 2:
        return ()
    acts = (("raise_zone", "Lay over the next zone"), ("lower_zone", "Lay under the zone before"))
    return tuple(
        CardForm(edit, act, hidden=hidden, why_not=edit_from(edit, dict(hidden), unit).why_not(panel, unit))
        for edit, act in acts
    )


def _means(fixing: Fixing) -> tuple[tuple[str, str], ...]:
    known = (*HELD_BY, ("", "not said"))
    by = fixing.by or ""
    return known if by in dict(known) else (*known, (by, by))


def _uses(opening: Opening) -> tuple[tuple[str, str], ...]:
    known = {value for value, _ in USES}
    return USES if (opening.use or "") in known else (*USES, (opening.use or "", opening.use or ""))


def _shape_form(edit: str, shape: Shape, hidden: Hidden, unit: str) -> CardForm:
    match shape:
        case Rect():
            return CardForm(edit, "Set", _box_fields(shape, unit), (*hidden, ("shape", "rect")))
        case Arch():
            rise = length_field("rise", "Rise of the arch", shape.rise, unit)
            return CardForm(edit, "Set", (*_box_fields(shape, unit), rise), (*hidden, ("shape", "arch")))
        case Circle():
            radius = length_field("radius", "Radius", shape.radius, unit)
            centre = (length_field("x", "Centre across", shape.x, unit), length_field("y", "Centre up", shape.y, unit))
            return CardForm(edit, "Set", (*centre, radius), (*hidden, ("shape", "circle")))
        case Polygon():
            points = Field("points", "Points: x, y; x, y", points_text(shape.points, unit), wide=True)
            return CardForm(edit, "Set", (points,), (*hidden, ("shape", "polygon")))


def _box_fields(shape: Rect | Arch, unit: str) -> tuple[Field, ...]:
    return (
        length_field("x", "Left, from panel's left", shape.x, unit),
        length_field("y", "Foot, from panel's foot", shape.y, unit),
        length_field("width", "Width", shape.width, unit),
        length_field("height", "Height", shape.height, unit),
    )


def _band_form(band: Band, hidden: Hidden) -> CardForm:
    fields = (Field("course", "First course", str(band.course)), Field("courses", "Courses", str(band.courses)))
    return CardForm("place_zone", "Set", fields, (*hidden, ("shape", "band")))
