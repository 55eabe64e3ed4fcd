"""Drawings as SVG: a whole document at true scale, or the layers of a live drawing for a page to style.

Both hold the same shapes in inches with y down from the top of what is drawn; a document lays them on paper by one
positive scale, so nothing in it is ever turned over.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache, lru_cache, singledispatch
from xml.sax.saxutils import escape

import svgwrite
from svgwrite.base import BaseElement
from svgwrite.container import Defs, Group
from svgwrite.path import Path
from svgwrite.pattern import Pattern
from svgwrite.shapes import Circle as Round
from svgwrite.shapes import Rect
from svgwrite.text import Text as Lettering

from app.drawing.drawing import Drawing
from app.drawing.dress import Attributes, Dress, by_class, by_palette
from app.drawing.hatches import HATCHES, hatch_path, hatch_step
from app.drawing.marks import Anchor, Areas, Boxes, Circle, Layer, Letters, Lines, Mark, Text, content
from app.drawing.palettes import INKS, THIN, hatch_inks
from app.drawing.paths import TICKS, areas_path, boxes_path, lines_path, number, ticks
from app.drawing.scales import Scale
from app.drawing.styles import Style

FONT = "Source Sans Pro"

PLACE, WORDS = ("@x", "@y", "@middle"), "@words"
"""Signs in a text that is to be filled in; the words go in last."""

_BASELINE = 0.33
"""Half the height of capitals in ems: a text hangs on its middle, SVG puts it on its baseline."""

_DRAWN: dict[tuple[object, ...], str] = {}
_MOST_DRAWN = 32_768
"""Marks as they were written before, by what they say: plain keys, which are compared many times faster than marks."""


@dataclass(frozen=True, slots=True)
class _Writer:
    """How marks become elements: where y turns over, inches under a mm of paper, and what elements wear."""

    height: float
    inches: float
    dress: Dress


def svg_document(drawing: Drawing, palette: str = "paper") -> str:
    """The drawing as a file, sized in mm of paper at its scale; raises KeyError for a palette that is not in INKS.

    Set in FONT: whoever shows it brings the font.
    """
    wide, high = drawing.paper
    around, scale = drawing.margins, drawing.scale
    size = (f"{wide:.4f}mm", f"{high:.4f}mm")
    page = svgwrite.Drawing(size=size, viewBox=f"0 0 {wide:.4f} {high:.4f}", debug=False)
    page.set_desc(title=drawing.title, desc=drawing.words)
    page.add(_patterns_for(palette, scale))
    page.add(Rect((0, 0), ("100%", "100%"), fill=INKS[palette].ground, debug=False))
    lay = f"translate({around.left:g} {around.top:g}) scale({scale.mm_per_inch:.9g})"
    body = Group(transform=lay, font_family=FONT, stroke_linejoin="miter", fill_rule="evenodd", debug=False)
    writer = _Writer(drawing.height, scale.inches_per_mm, by_palette(palette, scale))
    for layer in drawing.layers:
        body.add(_group(layer, writer))
    page.add(body)
    return str(page.tostring())


def svg_layers(drawing: Drawing) -> dict[str, str]:
    """Markup inside each layer's group, by layer name: inches, y down from the top, class names only.

    Meant for an svg whose viewBox is `drawing.view_box`; "" for a layer without marks. Pens and colours come from
    `style_sheet`, hatchings from `svg_patterns`.
    """
    height, inches = drawing.height, drawing.scale.inches_per_mm
    return {layer.name: _written_layer(layer, height, inches) for layer in drawing.layers}


def _written_layer(layer: Layer, height: float, inches: float) -> str:
    return "".join([_markup(mark, height, inches) for mark in layer.marks]) if layer.marks else ""


def _markup(mark: Mark, height: float, inches: float) -> str:
    """Kept, as most marks of a drawing stand where they stood before an edit."""
    key = (height, inches, *content(mark))
    known = _DRAWN.get(key)
    if known is None:
        known = _written(mark, height, inches)
        if len(_DRAWN) >= _MOST_DRAWN:
            _DRAWN.clear()
        _DRAWN[key] = known
    return known


def _written(mark: Mark, height: float, inches: float) -> str:
    """Path data goes as it is between what is written around it: it holds nothing that XML would have escaped."""
    match mark:
        case Text():
            return _text_written(mark, height, inches)
        case Circle() | Letters():
            return "".join(str(element.tostring()) for element in _elements(mark, _Writer(height, inches, by_class)))
        case _:
            data = _path_data(mark, height)
            before, after = _around_path(mark.style)
            return f"{before}{data}{after}" if data else ""


def _text_written(mark: Text, height: float, inches: float) -> str:
    text = _text_like(mark.style, _number(mark.size_mm * inches), mark.anchor, mark.angle)
    for sign, said in zip(PLACE, _text_place(mark, height, inches), strict=True):
        text = text.replace(sign, said)
    return text.replace(WORDS, escape(mark.text))


@lru_cache(maxsize=1024)
def _text_like(style: Style, size: str, anchor: Anchor, angle: float) -> str:
    """A text of this look, with signs where its place and its words go: written once, and filled in for each."""
    return str(_worn(_lettering(WORDS, PLACE, size, anchor, angle), by_class("text", style)[0]).tostring())


def _path_data(mark: Boxes | Areas | Lines, height: float) -> str:
    match mark:
        case Boxes():
            return boxes_path(mark, height)
        case Areas():
            return areas_path(mark, height)
        case Lines():
            return lines_path(mark, height)


@cache
def _around_path(style: Style) -> tuple[str, str]:
    """What stands before and after the data of a path of this style."""
    (coat,) = by_class("shape", style)
    before, after = str(_worn(Path(d="M0 0", debug=False), coat).tostring()).split("M0 0")
    return before, after


@lru_cache(maxsize=64)
def svg_patterns(scale: Scale) -> str:
    """A `defs` with the hatchings, `hatch-<cut class>` and `hatch-sheet`, in class names only."""
    worn = {name: ({"class": f"hatch-ground {name}"}, {"class": f"hatch-line {name}"}) for name in HATCHES}
    return str(_patterns(scale, worn).tostring())


def _patterns_for(palette: str, scale: Scale) -> Defs:
    """Lines only: the ground is a coat of its own, for tiles of ground show their edges on paper."""
    pen = f"{min(THIN * scale.inches_per_mm, hatch_step('length', scale) / 5):.4g}"
    inks = hatch_inks(INKS[palette])
    lines = {name: {"stroke": inks[name][1], "stroke-width": pen, "fill": "none"} for name in HATCHES}
    return _patterns(scale, {name: (None, line) for name, line in lines.items()})


def _patterns(scale: Scale, worn: Mapping[str, tuple[Attributes | None, Attributes]]) -> Defs:
    defs = Defs(debug=False)
    for name, (ground, line) in worn.items():
        step = hatch_step(name, scale)
        side = f"{step:.4g}"
        pattern = Pattern(id=f"hatch-{name}", size=(side, side), debug=False)
        pattern.attribs["patternUnits"] = "userSpaceOnUse"
        if ground is not None:
            pattern.add(_worn(Rect((0, 0), (side, side), debug=False), ground))
        pattern.add(_worn(Path(d=hatch_path(name, step), debug=False), line))
        defs.add(pattern)
    return defs


def _group(layer: Layer, writer: _Writer) -> Group:
    group = Group(class_=f"layer {layer.name}", debug=False)
    for mark in layer.marks:
        for element in _elements(mark, writer):
            group.add(element)
    return group


def _worn(element: BaseElement, attributes: Attributes) -> BaseElement:
    element.attribs.update(attributes)
    return element


@singledispatch
def _elements(mark: Mark, writer: _Writer) -> Iterator[BaseElement]:
    raise TypeError(f"mark {type(mark).__name__} at height {writer.height:g} in: expected one of the marks")


@_elements.register(Boxes)
@_elements.register(Areas)
@_elements.register(Lines)
def _(mark: Boxes | Areas | Lines, writer: _Writer) -> Iterator[BaseElement]:
    return _paths(_path_data(mark, writer.height), mark.style, writer)


def _paths(data: str, style: Style, writer: _Writer) -> Iterator[BaseElement]:
    """One path a coat; none for nothing."""
    for coat in writer.dress("shape", style) if data else ():
        yield _worn(Path(d=data, debug=False), coat)


@_elements.register
def _(mark: Circle, writer: _Writer) -> Iterator[BaseElement]:
    x, y, radius = _number(mark.x), _number(writer.height - mark.y), _number(mark.radius_mm * writer.inches)
    for coat in writer.dress("shape", mark.style):
        yield _worn(Round((x, y), radius, debug=False), coat)


@_elements.register
def _(mark: Text, writer: _Writer) -> Iterator[BaseElement]:
    place = _text_place(mark, writer.height, writer.inches)
    size = _number(mark.size_mm * writer.inches)
    yield _worn(_lettering(mark.text, place, size, mark.anchor, mark.angle), writer.dress("text", mark.style)[0])


def _text_place(mark: Text, height: float, inches: float) -> tuple[str, str, str]:
    """Where a text hangs: x, its baseline, and the middle of its capitals."""
    y = height - mark.y
    return _number(mark.x), _number(y + _BASELINE * mark.size_mm * inches), _number(y)


def _lettering(words: str, place: tuple[str, str, str], size: str, anchor: Anchor, angle: float) -> Lettering:
    x, baseline, middle = place
    element = Lettering(words, debug=False)
    element.attribs |= {"x": x, "y": baseline, "font-size": size}
    if anchor != "start":
        element.attribs["text-anchor"] = anchor
    if angle:
        element.attribs["transform"] = f"rotate({-angle:g} {x} {middle})"
    return element


@_elements.register
def _(mark: Letters, writer: _Writer) -> Iterator[BaseElement]:
    size = mark.size_mm * writer.inches
    element = Lettering(mark.letters, debug=False)
    element.attribs["x"] = " ".join(map(number, ticks(mark.x).tolist()))
    element.attribs["y"] = " ".join(map(number, ticks(writer.height - mark.y + _BASELINE * size).tolist()))
    element.attribs |= {"font-size": _number(size), "text-anchor": "middle"}
    yield _worn(element, writer.dress("text", mark.style)[0])


def _number(value: float) -> str:
    return number(round(value * TICKS))
