"""The layer of colours: every piece once, in a style and hatching of its colour, and a key with letters."""

from collections import Counter

import numpy as np
import pytest
from shapes import SHAPES, example, rectangle

from app.brickwork.blend import colours_of
from app.brickwork.layout import Layout, lay_out
from app.drawing.layers import layer
from app.drawing.marks import Areas, Boxes, Letters, Text
from app.drawing.palettes import INKS, palette
from app.drawing.scales import US_SCALES
from app.drawing.scene import Scene
from app.drawing.styles import BLEND_STYLES
from app.drawing.views.elevation import COLOURED, LAYERS, elevation
from app.panel.blend import Blend, Colour

THREE = Blend((Colour("red", 40), Colour("brown", 35), Colour("grey", 25)))
LARGE = US_SCALES[0]


def scene(layout: Layout, blend: Blend = THREE) -> Scene:
    return Scene(layout, scale=LARGE, blend=blend)


@pytest.mark.parametrize("shape", SHAPES)
def test_every_piece_is_drawn_once_in_its_colour(shape: str) -> None:
    """Counted by style, and by area against the bricks of the layout."""
    layout = lay_out(example(shape))
    found = [mark for mark in layer("blend", scene(layout)).marks if isinstance(mark, Areas)]
    drawn = {mark.style: len(mark.count) for mark in found}
    counted = Counter(BLEND_STYLES[colour] for colour in colours_of(layout, THREE).tolist())
    assert drawn == counted
    assert sum(map(_area, found)) == pytest.approx(layout.area.brick)


def _area(mark: Areas) -> float:
    """By the shoelace formula, ring by ring."""
    rings = np.split(mark.points, np.cumsum(mark.count)[:-1])
    return sum(abs(np.dot(r[:, 0], np.roll(r[:, 1], -1)) - np.dot(r[:, 1], np.roll(r[:, 0], -1))) / 2 for r in rings)


def test_whole_bricks_have_the_letter_of_their_colour() -> None:
    layout = lay_out(rectangle(80, 40))
    (letters,) = (mark for mark in layer("blend", scene(layout)).marks if isinstance(mark, Letters))
    units = layout.units
    colours = colours_of(layout, THREE)[~units.is_trimmed]
    assert letters.letters == "".join("ABC"[colour] for colour in colours.tolist())
    assert letters.x.tolist() == (units.x + units.width / 2)[~units.is_trimmed].tolist()


def test_the_key_names_letter_colour_and_share() -> None:
    marks = layer("blend_key", scene(lay_out(rectangle(80, 40)))).marks
    assert [mark.text for mark in marks if isinstance(mark, Text)] == ["A red, 40 %", "B brown, 35 %", "C grey, 25 %"]
    assert [mark.style for mark in marks if isinstance(mark, Boxes)] == list(BLEND_STYLES[:3])


@pytest.mark.parametrize("name", INKS)
def test_no_two_colours_of_a_blend_look_alike(name: str) -> None:
    """Neither by fill nor by hatching, on paper, at night and in print."""
    looks = [palette(name)[style] for style in BLEND_STYLES]
    assert len({look.fill for look in looks}) == len(looks)
    assert len({look.hatch for look in looks}) == len(looks)


def test_brick_of_one_colour_has_nothing_to_show() -> None:
    one = scene(lay_out(rectangle(80, 40)), Blend())
    assert layer("blend", one).marks == ()
    assert layer("blend_key", one).marks == ()


def test_the_usual_elevation_is_without_and_the_coloured_one_with_them() -> None:
    assert "blend" not in LAYERS
    drawn = elevation(lay_out(rectangle(80, 40)), layers=COLOURED, blend=THREE)
    assert [one.name for one in drawn.layers] == list(COLOURED)
    assert next(one for one in drawn.layers if one.name == "blend").marks
