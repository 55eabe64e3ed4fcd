"""A drawing set into a page: groups of one svg that take pens and colours from the page's style sheet."""

from dataclasses import dataclass

from markupsafe import Markup

from app.drawing.drawing import Drawing
from app.drawing.svg import svg_layers, svg_patterns

PIXELS_PER_MM = 5.0
"""CSS pixels for a millimetre of paper, so that the smallest letters are as high as small print on a page."""


@dataclass(frozen=True, slots=True)
class InlineDrawing:
    """One svg; `markup` holds its layers as groups, the lowest first; `width` in pixels, "" for as wide as the page."""

    view_box: str
    label: str
    patterns: Markup
    markup: Markup
    width: str
    hatched: str


def inline_drawing(drawn: Drawing, label: str, *, hatched: str = "") -> InlineDrawing:
    """A drawing with what somebody hears who does not see it.

    With `hatched` it stands to its own scale beside another drawing of the page and has hatchings of its own, named so;
    the page's style sheet fills with them.
    """
    layers = svg_layers(drawn)
    patterns = svg_patterns(drawn.scale)
    return InlineDrawing(
        view_box=" ".join(f"{side:.4f}" for side in drawn.view_box),
        label=label,
        patterns=Markup(patterns.replace('id="hatch-', f'id="{hatched}-hatch-') if hatched else patterns),
        markup=Markup("".join(f'<g class="layer {name}">{markup}</g>' for name, markup in layers.items())),
        width=f"{drawn.paper[0] * PIXELS_PER_MM:.0f}" if hatched else "",
        hatched=f"hatched-{hatched}" if hatched else "",
    )
