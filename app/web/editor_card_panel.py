"""The card of the panel itself: its size, its brick, and what can be added to it."""

import json
from collections.abc import Sequence

from app.lengths import Length, format_length
from app.panel.project import Wall
from app.panel.values import Brickwork, Panel
from app.web.editor_card_bed import casting_form, laying_form
from app.web.editor_card_fit import fit_form, wall_form
from app.web.editor_cards import (
    Card,
    CardForm,
    CardThing,
    Draw,
    Field,
    Stock,
    choice_field,
    length_field,
    picture_field,
    points_text,
)
from app.web.editor_things import Thing

USES = (("window", "window"), ("door", "door"), ("louver", "louver"), ("vent", "vent"), ("", "other"))
HELD_BY = (("glue", "glue"), ("tape", "tape"), ("nails", "nails"))


def panel_card(wall: Wall, panel: Panel, shapes: Sequence[Thing], stock: Stock) -> Card:
    """What is shown when no thing of the panel is chosen."""
    unit = stock.unit
    width, height = Length.from_inches(panel.width), Length.from_inches(panel.height)
    return Card(
        title=f"Panel {panel.mark}",
        words=f"{format_length(width, unit)} x {format_length(height, unit)}",
        forms=(
            bond_form("field", panel.field, stock),
            fit_form(panel).under("What may give, and what matters"),
            wall_form(wall, panel, unit).under(f"In wall {wall.mark}"),
            _opening_form().under("Add an opening"),
            _arch_form().under("Add an arched opening"),
            _round_form().under("Add a round opening"),
            _polygon_form().under("Add an opening of any outline"),
            _zone_form(panel, stock).under("Add a zone"),
            _band_form(panel, stock).under("Add a band of courses"),
            _strip_form().under("Add a rustication strip"),
            _fixing_form().under("Add a fixing line"),
            CardForm("add_plate", "Add", box_fields(), (("shape", "rect"),)).under("Add an embed plate"),
            _size_form(panel, unit).under("Size and outline"),
            _own_form(panel, unit).under("Mark, thickness, base"),
            origin_form("field", panel.field, unit).under("Where the bond starts"),
            _margin_form(panel, unit).under("Margin"),
            _limits_form(panel, unit).under("Smallest pieces"),
            laying_form(panel).under("How sheets are laid"),
            casting_form(panel).under("Casting day"),
        ),
        things=tuple(CardThing(shape.key, shape.name, shape.words) for shape in shapes),
    )


def bond_form(part: str, work: Brickwork, stock: Stock) -> CardForm:
    """Brick and bond of the field or a zone."""
    fields = (
        choice_field("size", "Brick", work.size, [(size, size) for size in stock.sizes]),
        picture_field("bond", "Bond", work.bond, stock.bonds),
    )
    return CardForm("set_brickwork", "Lay", fields, (("part", part),))


def origin_form(part: str, work: Brickwork, unit: str) -> CardForm:
    """Where a part's first brick stands."""
    x, y = work.origin or (None, None)
    fields = (length_field("x", "Across", x, unit, "lower left"), length_field("y", "Up", y, unit, "lower left"))
    return CardForm("set_origin", "Start here", fields, (("part", part),))


def box_fields() -> tuple[Field, ...]:
    """An empty rectangle: lower-left corner and size."""
    names = (
        ("x", "Left, from panel's left"),
        ("y", "Foot, from panel's foot"),
        ("width", "Width"),
        ("height", "Height"),
    )
    return tuple(Field(name, label) for name, label in names)


def _named(use: str) -> tuple[Field, ...]:
    return choice_field("use", "Use", use, USES, wide=False), Field("mark", "Mark", holder="next free")


def _arch_form() -> CardForm:
    fields = (*_named("window"), *box_fields(), Field("rise", "Rise of the arch"))
    return CardForm("add_opening", "Add", fields, (("shape", "arch"),))


def _round_form() -> CardForm:
    fields = (*_named("vent"), Field("x", "Centre across"), Field("y", "Centre up"), Field("radius", "Radius"))
    return CardForm("add_opening", "Add", fields, (("shape", "circle"),))


def _polygon_form() -> CardForm:
    fields = (*_named("louver"), Field("points", "Points: x, y; x, y", wide=True))
    return CardForm("add_opening", "Add", fields, (("shape", "polygon"),))


def _opening_form() -> CardForm:
    fields = (*_named("window"), *box_fields())
    draw = Draw("add_opening", json.dumps({"shape": "rect", "use": "window"}), "Drag the window's corners", "Draw it")
    return CardForm("add_opening", "Add", fields, (("shape", "rect"),), draw=draw)


def _zone_form(panel: Panel, stock: Stock) -> CardForm:
    fields = (*box_fields(), *bond_form("", Brickwork(panel.field.size, "stack"), stock).fields)
    values = {"shape": "rect", "size": panel.field.size, "bond": "stack"}
    draw = Draw("add_zone", json.dumps(values), "Drag the zone's corners", "Draw it")
    return CardForm("add_zone", "Add", fields, (("shape", "rect"),), draw=draw)


def _band_form(panel: Panel, stock: Stock) -> CardForm:
    fields = (
        Field("course", "First course"),
        Field("courses", "Courses"),
        *bond_form("", Brickwork(panel.field.size, "soldier"), stock).fields,
    )
    return CardForm("add_zone", "Add", fields, (("shape", "band"),))


def _strip_form() -> CardForm:
    line = Field("line", "Line: x, y; x, y", wide=True)
    return CardForm("add_strip", "Add", (line, Field("width", "Width"), Field("mark", "Mark", holder="next free")))


def _fixing_form() -> CardForm:
    line = Field("line", "Line: x, y; x, y", wide=True)
    return CardForm("add_fixing", "Add", (line, choice_field("by", "Held by", "glue", HELD_BY)))


def _size_form(panel: Panel, unit: str) -> CardForm:
    points = Field("points", "Points: x, y; x, y", points_text(panel.outline, unit), wide=True)
    return CardForm("set_outline", "Set outline", (points,))


def _own_form(panel: Panel, unit: str) -> CardForm:
    fields = (
        Field("mark", "Mark", panel.mark),
        length_field("thickness", "Thickness", panel.thickness, unit),
        length_field("base", "Base above datum", panel.base, unit),
    )
    return CardForm("set_panel", "Set", fields)


def _margin_form(panel: Panel, unit: str) -> CardForm:
    field = length_field("margin", "Plain concrete at edges", panel.margin, unit, "one head joint")
    return CardForm("set_margin", "Set", (field,))


def _limits_form(panel: Panel, unit: str) -> CardForm:
    fields = (
        length_field("smallest_cut", "Thinner is no brick", panel.smallest_cut, unit, '1/4"'),
        length_field("least_piece", "Shorter is small", panel.least_piece, unit, "half bat"),
    )
    return CardForm("set_limits", "Set", fields)
