"""The drawing on the screen: each layer as one group, and of two drawings only the groups that differ."""

import json
from collections.abc import Collection
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import chain, groupby

from markupsafe import Markup

from app.brickwork.layout import Layout
from app.brickwork.sides import SideLines, meeting_lines
from app.drawing.cells import Grid, in_cells
from app.drawing.drawing import Drawing
from app.drawing.marks import Layer
from app.drawing.scales import Margins, Scale
from app.drawing.scene import Scene
from app.drawing.svg import svg_layers, svg_patterns
from app.drawing.views.assemble import assemble
from app.drawing.views.elevation import LAYERS as ELEVATION
from app.drawing.views.elevation import WORDS
from app.workflow.compute import Computed

PAPER_MM = (235.0, 165.0)
"""The paper that a whole panel is drawn for: on a common screen its lettering comes out at reading size."""
AROUND = Margins(left=44.0, right=28.0, bottom=36.0, top=13.0)
_COLOURED = {"cuts": ("cuts", "blend"), "title": (), "key": ()}
LAYERS = tuple(other for name in ELEVATION for other in _COLOURED.get(name, (name,)))
"""The page itself says what the title says; the key is in the list of layers."""
CELLS = {
    "brick": (6, 8),
    "cuts": (3, 6),
    "blend": (3, 4),
    "small": (3, 4),
    "letters": (3, 4),
    "sheets": (3, 4),
    "sheet_numbers": (3, 4),
    "openings": (3, 4),
    "sizes": (3, 4),
    "pole": (1, 6),
    "tape": (4, 1),
    "dimensions": (4, 6),
}
"""Columns and rows of the layers of many shapes: an edit changes a few cells of them."""
WORDS_IN_CELLS = ("openings", "sizes")
"""Of these only the words lie in cells, above all shapes."""

SHEETS = frozenset({"sheets", "sheet_numbers"})
"""The layers that show the sheet plan: while they are hidden, no edit waits for it."""


@dataclass(frozen=True, slots=True)
class Part:
    """One group in the SVG namespace that is swapped whole: a layer, or one cell of it; `layer` is where it stands."""

    id: str
    markup: Markup
    layer: str = ""


@dataclass(frozen=True, slots=True)
class Picture:
    """Everything in the svg element that the layout decides; `box` is left, top, width, height in inches, y down."""

    box: tuple[float, float, float, float]
    height: float
    parts: tuple[Part, ...]

    @property
    def view_box(self) -> str:
        return " ".join(f"{side:.4f}" for side in self.box)

    @property
    def layers(self) -> tuple[tuple[str, tuple[Part, ...]], ...]:
        """The parts by the layer in which they stand, in stacking order; parts of their own under ""."""
        return tuple((name, tuple(parts)) for name, parts in groupby(self.parts, key=lambda part: part.layer))

    def less(self, other: "Picture") -> "Picture":
        """Only the groups that differ from those of another picture."""
        same = {part.id: part.markup for part in other.parts}
        parts = tuple(part for part in self.parts if same.get(part.id) != part.markup)
        return replace(self, parts=parts)


def picture_of(computed: Computed, unit: str, hidden: Collection[str] = ()) -> Picture:
    """The elevation for the screen; the groups of layers that are hidden stay empty until they are shown."""
    layout, scale = computed.layout, _screen_scale(computed)
    mark, blend = layout.panel.mark, computed.given.blend
    shown = [name for name in LAYERS if name not in hidden]
    plan = computed.plan if SHEETS & set(shown) else None
    scene = Scene(layout, "face", scale, plan, computed.drift, unit, mark, WORDS, None, blend)
    drawing = assemble(scene, shown, AROUND)
    layers = {layer.name: layer for layer in drawing.layers}
    drawing = _in_cells(replace(drawing, layers=tuple(layers.get(name, Layer(name, ())) for name in LAYERS)))
    hatches = Part("patterns", Markup(f'<g id="patterns">{svg_patterns(scale)}</g>'))
    layers_now = (_part(name, markup) for name, markup in svg_layers(drawing).items())
    return Picture(drawing.view_box, drawing.height, (hatches, *layers_now, _snap(layout)))


def _in_cells(drawing: Drawing) -> Drawing:
    return replace(drawing, layers=tuple(chain.from_iterable(_cells_of(drawing, layer) for layer in drawing.layers)))


def _cells_of(drawing: Drawing, layer: Layer) -> tuple[Layer, ...]:
    if layer.name not in CELLS:
        return (layer,)
    grid = Grid(*CELLS[layer.name], drawing.width, drawing.height)
    return in_cells(layer, grid, words_only=layer.name in WORDS_IN_CELLS)


@lru_cache(maxsize=4096)
def _part(name: str, markup: str) -> Part:
    layer, _, cell = name.partition("-")
    return Part(
        f"layer-{name}", Markup(f'<g id="layer-{name}" class="layer {layer}">{markup}</g>'), layer if cell else ""
    )


def _snap(layout: Layout) -> Part:
    """Lines to meet and courses, for the script: a group without a mark, so that it is swapped as the layers are."""
    feet = tuple(course.bottom for course in layout.courses)
    ends = (*feet, feet[-1] + layout.size.gauge) if feet else ()
    return _snap_of(tuple(meeting_lines(layout).items()), layout.courses[0].course if feet else 0, ends)


@lru_cache(maxsize=16)
def _snap_of(sides: tuple[tuple[str, SideLines], ...], first: int, ends: tuple[float, ...]) -> Part:
    lines = {side: [found.words, found.first, _rounded(found.at)] for side, found in sides}
    courses = [first, _rounded(ends)]
    group = Markup('<g id="snap" data-lines="{}" data-courses="{}"></g>')
    return Part("snap", group.format(json.dumps(lines, separators=(",", ":")), json.dumps(courses)))


def _rounded(values: tuple[float, ...]) -> list[float]:
    return [round(value, 8) for value in values]


def _screen_scale(computed: Computed) -> Scale:
    panel = computed.layout.panel
    room = (PAPER_MM[0] - AROUND.left - AROUND.right, PAPER_MM[1] - AROUND.bottom - AROUND.top)
    return Scale(max(panel.width * 25.4 / room[0], panel.height * 25.4 / room[1]), "to fit")
