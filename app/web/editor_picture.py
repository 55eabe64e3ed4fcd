"""The drawing on the screen: each layer as one group, and of two drawings only the groups that differ."""

from dataclasses import dataclass

from markupsafe import Markup, escape

from app.drawing.drawing import Drawing
from app.drawing.scales import Scale
from app.drawing.svg import svg_layers, svg_patterns
from app.drawing.views.elevation import elevation
from app.workflow.compute import Computed

PAPER_MM = (215.0, 150.0)
"""The paper that a whole panel is drawn for: on a common screen its lettering comes out at reading size."""
AROUND_MM = (38.0, 62.0)


@dataclass(frozen=True, slots=True)
class Part:
    """One layer's group in the SVG namespace."""

    id: str
    markup: Markup

    def swapping(self) -> "Part":
        """The group marked to take the place of the one on the page."""
        return Part(self.id, Markup(self.markup.replace("<g ", '<g hx-swap-oob="true" ', 1)))


@dataclass(frozen=True, slots=True)
class Picture:
    """Everything in the svg element that the layout decides; `box` is left, top, width, height in inches, y down."""

    box: tuple[float, float, float, float]
    height: float
    patterns: Markup
    parts: tuple[Part, ...]

    @property
    def view_box(self) -> str:
        return " ".join(f"{side:.4f}" for side in self.box)

    def less(self, other: "Picture") -> "Picture":
        """Only the groups that differ from those of another picture."""
        same = {part.id: part.markup for part in other.parts}
        parts = tuple(part for part in self.parts if same.get(part.id) != part.markup)
        return Picture(self.box, self.height, self.patterns, parts)

    def swapping(self) -> "Picture":
        """The same groups, marked to take the place of those on the page."""
        parts = tuple(
            Part(part.id, Markup(part.markup.replace("<g ", '<g hx-swap-oob="true" ', 1))) for part in self.parts
        )
        return Picture(self.box, self.height, self.patterns, parts)


def picture_of(computed: Computed, unit: str) -> Picture:
    """The elevation for the screen."""
    drawing = elevation(
        computed.layout, plan=computed.plan, drift=computed.drift, scale=_screen_scale(computed), unit=unit
    )
    parts = tuple(_part(name, markup) for name, markup in svg_layers(drawing).items())
    return Picture(drawing.view_box, drawing.height, Markup(_patterns(drawing)), parts)


def _patterns(drawing: Drawing) -> str:
    return svg_patterns(drawing.scale)


def _part(name: str, markup: str) -> Part:
    group = Markup('<g id="layer-{0}" class="layer {0}">{1}</g>').format(escape(name), Markup(markup))
    return Part(f"layer-{name}", group)


def _screen_scale(computed: Computed) -> Scale:
    panel = computed.layout.panel
    room = (PAPER_MM[0] - AROUND_MM[0], PAPER_MM[1] - AROUND_MM[1])
    return Scale(max(panel.width * 25.4 / room[0], panel.height * 25.4 / room[1]), "to fit")
