"""A drawing set into a page: groups of one svg that take pens and colours from the page's style sheet."""

from dataclasses import dataclass

from markupsafe import Markup

from app.drawing.drawing import Drawing
from app.drawing.svg import svg_layers, svg_patterns


@dataclass(frozen=True, slots=True)
class InlineDrawing:
    """One svg; `markup` holds its layers as groups, the lowest first."""

    view_box: str
    label: str
    patterns: Markup
    markup: Markup


def inline_drawing(drawn: Drawing, label: str) -> InlineDrawing:
    """A drawing with what somebody hears who does not see it."""
    layers = svg_layers(drawn)
    return InlineDrawing(
        view_box=" ".join(f"{side:.4f}" for side in drawn.view_box),
        label=label,
        patterns=Markup(svg_patterns(drawn.scale)),
        markup=Markup("".join(f'<g class="layer {name}">{markup}</g>' for name, markup in layers.items())),
    )
