"""A little picture of a bond: a window cut out of its real layout."""

from functools import lru_cache

from app.brickwork.bond import Bond
from app.brickwork.layout import Layout, lay_out
from app.brickwork.sizes import CATALOGUE
from app.drawing.drawing import Drawing
from app.drawing.layers.brick import marks as whole_units
from app.drawing.marks import Areas, Layer, Mark, box
from app.drawing.scales import Margins, Scale
from app.drawing.scene import Scene
from app.drawing.svg import svg_document
from app.lengths import Length
from app.panel.size import BrickSize
from app.panel.values import Brickwork, Panel

WIDE, HIGH = 36.0, 24.0
"""Inches of face in the picture: four and a half bricks by nine courses of the modular size."""

PIXELS_WIDE, PIXELS_HIGH = 96, 64
"""The picture's size on a page, CSS pixels; 96 of them are an inch (CSS Values and Units)."""


@lru_cache(maxsize=256)
def swatch(bond: Bond, palette: str = "paper", size: BrickSize = CATALOGUE["modular"]) -> str:
    """The bond as a small SVG document; pieces cut by the window's edge are drawn like whole ones.

    Raises KeyError for a palette that is not known.
    """
    scale = Scale(WIDE * 96 / PIXELS_WIDE, "not to scale")
    layer = Layer("brick", bond_marks(bond, size))
    words = f"A piece of face in this bond, {size.name} brick"
    return svg_document(Drawing(bond.words, words, WIDE, HIGH, Margins(0, 0, 0, 0), scale, (layer,)), palette)


def bond_marks(bond: Bond, size: BrickSize = CATALOGUE["modular"]) -> tuple[Mark, ...]:
    """A window of face in this bond, its lower left corner where a brick starts."""
    layout, scale = _laid(bond, size), Scale(WIDE * 96 / PIXELS_WIDE, "not to scale")
    brick = whole_units(Scene(layout, "face", scale))
    return (box(0, 0, WIDE, HIGH, "joint"), *brick, *_cut_by_the_window(layout))


def _laid(bond: Bond, size: BrickSize) -> Layout:
    """A face of the window's size without a margin, where no piece is too thin to be shown."""
    none, wide, high = Length(0), Length.from_inches(WIDE), Length.from_inches(HIGH)
    outline = ((none, none), (wide, none), (wide, high), (none, high))
    work = Brickwork(size.name, bond.name, (none, none))
    panel = Panel(bond.name, outline, Length.from_inches(7), work, margin=none, smallest_cut=Length.from_inches(0.01))
    return lay_out(panel, {size.name: size}, {bond.name: bond})


def _cut_by_the_window(layout: Layout) -> tuple[Mark, ...]:
    pieces = layout.trims.pieces
    return (Areas(pieces.points, pieces.count, "whole"),) if len(pieces.count) else ()
