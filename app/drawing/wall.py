"""The panels of a wall side by side to one scale, as they will stand, courses running through."""

from collections.abc import Sequence

from app.brickwork.layout import Layout
from app.drawing.drawing import Drawing
from app.drawing.layers import layer
from app.drawing.marks import Layer, Mark
from app.drawing.moved import moved
from app.drawing.scales import QUARTER_INCH, Margins, Scale
from app.drawing.scene import Scene
from app.drawing.wall_strips import wall_datum, wall_pole, wall_tape, wall_words
from app.panel.project import Wall

WORDS = "WALL, faces seen from outside"

LAYERS = ("concrete", "openings", "brick", "cuts", "outline", "small")

AROUND = Margins(left=18.0, right=8.0, bottom=22.0, top=4.0)
"""Room for the pole, the panels' marks under them and the tape, mm."""

CLOSE_AROUND = Margins(left=4.0, right=4.0, bottom=4.0, top=4.0)


def wall_elevation(
    layouts: Sequence[Layout],
    wall: Wall,
    *,
    scale: Scale = QUARTER_INCH,
    unit: str = "in",
    title: str = "",
    layers: Sequence[str] = LAYERS,
    with_strips: bool = True,
) -> Drawing:
    """The wall from its first panel at the left to its last, `wall.joint` between, each on its own base height.

    `layouts` are those of the wall's panels in their order; none gives an empty drawing. `with_strips` adds pole, tape,
    the datum's tick and words under the panels.
    """
    places = panel_places(layouts, wall)
    scenes = [Scene(layout, "face", scale, unit=unit) for layout in layouts]
    drawn = tuple(Layer(name, tuple(_all(name, scenes, places))) for name in layers)
    width = max((x + one.panel.width for one, (x, _) in zip(layouts, places, strict=True)), default=0.0)
    height = max((y + one.panel.height for one, (_, y) in zip(layouts, places, strict=True)), default=0.0)
    if with_strips:
        datum = wall_datum(wall.datum.inches - lowest_base(layouts), height, scale)
        strips = wall_pole(layouts, places, height, scale), wall_tape(layouts, places, width, scale, unit)
        drawn = (*drawn, *strips, datum, wall_words(layouts, places, scale, unit))
    return Drawing(
        title or f"Wall {wall.mark}", WORDS, width, height, AROUND if with_strips else CLOSE_AROUND, scale, drawn
    )


def panel_places(layouts: Sequence[Layout], wall: Wall) -> list[tuple[float, float]]:
    """Lower-left corner of each panel in the wall, inches from the first panel's left and the lowest base."""
    lowest, places, x = lowest_base(layouts), [], 0.0
    for layout in layouts:
        places.append((x, layout.panel.base.inches - lowest))
        x += layout.panel.width + wall.joint.inches
    return places


def lowest_base(layouts: Sequence[Layout]) -> float:
    """Elevation of the lowest panel's foot, inches: the drawing's zero; 0 for no panels."""
    return min((layout.panel.base.inches for layout in layouts), default=0.0)


def _all(name: str, scenes: Sequence[Scene], places: Sequence[tuple[float, float]]) -> list[Mark]:
    drawn = [(layer(name, scene), place) for scene, place in zip(scenes, places, strict=True)]
    return [moved(mark, dx, dy) for panel_layer, (dx, dy) in drawn for mark in panel_layer.marks]
