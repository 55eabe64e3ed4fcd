"""The pole by itself: numbered courses with their heights, heads and sills with what they miss."""

from app.brickwork.layout import Layout
from app.drawing.drawing import Drawing
from app.drawing.layers import layer
from app.drawing.scales import QUARTER_INCH, Margins, Scale
from app.drawing.scene import Scene

WORDS = "STORY POLE, from the panel's foot up; the same on the bed as on the wall"

LAYERS = ("pole", "pole_words", "pole_title")

AROUND = Margins(left=44.0, right=96.0, bottom=26.0, top=8.0)
"""Room for the pole and the heights at its left, the words at its right and below, mm."""


def story_pole(layout: Layout, *, scale: Scale = QUARTER_INCH, unit: str = "in", title: str = "") -> Drawing:
    """The story pole of one panel at the scale's height; its breadth is drawn, not to scale.

    An empty brick field gives a pole without courses.
    """
    scene = Scene(layout, "face", scale, unit=unit, title=title or f"{layout.panel.mark}, story pole", words=WORDS)
    layers = tuple(layer(name, scene) for name in LAYERS)
    return Drawing(scene.title, scene.words, 0.0, scene.height, AROUND, scale, layers)
