"""Attributes of drawn elements: class names for a page to style, or the looks of a palette written out."""

from collections.abc import Callable
from typing import Literal

from app.drawing.palettes import DASH_MM, Look, palette
from app.drawing.scales import Scale
from app.drawing.styles import Style

Part = Literal["shape", "text"]
Attributes = dict[str, str]
Coats = tuple[Attributes, ...]
Dress = Callable[[Part, Style], Coats]
"""What an element wears; more than one when it is drawn again on itself, as a hatching is on its ground."""

HALO_MM = 0.9
"""Edge of ground colour around a text that stands on brick, mm of paper, both sides together."""


GAP_SHOWS = 0.75
"""Inches of panel under a mm of paper: at a larger scale a 3/8 in. joint is wider than 0.5 mm and shows as a gap."""


def by_class(part: Part, style: Style) -> Coats:
    """Class names only: no colour, no pen, nothing that a strict content policy refuses."""
    del part
    return ({"class": style},)


def by_palette(name: str, scale: Scale) -> Dress:
    """The looks of one palette, pens in inches of panel at this scale; raises KeyError for an unknown palette."""
    looks = palette(name)
    inches = scale.inches_per_mm
    written: dict[tuple[Part, Style], Coats] = {}
    for style, look in looks.items():
        written["shape", style] = _shape(look, inches)
        written["text", style] = (_text(look, inches),)
    return lambda part, style: written[part, style]


def _shape(look: Look, inches: float) -> Coats:
    attributes = {"fill": look.wide if look.wide and inches < GAP_SHOWS else look.fill}
    if look.line != "none" and (inches < GAP_SHOWS or not look.near):
        attributes |= {"stroke": look.line, "stroke-width": f"{_pen(look, inches):.4g}"}
    if look.dashed:
        attributes["stroke-dasharray"] = " ".join(f"{dash * inches:.4g}" for dash in DASH_MM)
    return (attributes, {"fill": f"url(#hatch-{look.hatch})"}) if look.hatch else (attributes,)


def _pen(look: Look, inches: float) -> float:
    pen = look.pen * inches
    return min(pen, look.most) if look.most else pen


def _text(look: Look, inches: float) -> Attributes:
    attributes = {"fill": look.fill}
    if look.bold:
        attributes["font-weight"] = "600"
    if look.halo:
        attributes |= {"stroke": look.halo, "stroke-width": f"{HALO_MM * inches:.4g}"}
        attributes |= {"stroke-linejoin": "round", "paint-order": "stroke"}
    return attributes
