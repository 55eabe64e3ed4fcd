"""Walls drawn small for pages: every panel is a link to its editor."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from markupsafe import Markup

from app.drawing.drawing import Drawing
from app.drawing.scales import Scale
from app.drawing.svg import svg_layers, svg_patterns
from app.drawing.wall import AROUND, lowest_base, panel_places, wall_elevation
from app.drawing.wall_strips import standing
from app.web.wall_pole import Handle, pole_handle
from app.web.words import sized
from app.workflow.compute import Computed
from app.workflow.loading import LoadedPanel, LoadedWall

PAPER_MM = (260.0, 90.0)
"""A wall is drawn as if for this much paper, so that marks read well in a browser window."""

THUMBNAIL = ("concrete", "openings", "outline")
WALL = ("concrete", "openings", "brick", "cuts", "outline", "small")


@dataclass(frozen=True, slots=True)
class Target:
    """A panel's place in the drawing, in the svg's own units, y down."""

    address: str
    label: str
    x: str
    y: str
    width: str
    height: str


@dataclass(frozen=True, slots=True)
class WallDrawing:
    """One svg: groups of marks, a link over each panel, and the pole as a handle."""

    view_box: str
    label: str
    patterns: Markup
    markup: Markup
    targets: tuple[Target, ...]
    handle: Handle | None


def wall_drawing(wall: LoadedWall, computed: Mapping[str, Computed], unit: str) -> WallDrawing:
    """The wall with its brick; raises KeyError for a panel that is not in `computed`."""
    layouts = [computed[panel.id].layout for panel in wall.panels]
    drawn = wall_elevation(layouts, wall.wall, scale=_scale(wall), unit=unit, layers=WALL)
    places = panel_places(layouts, wall.wall)
    targets = tuple(_target(panel, place, drawn, unit) for panel, place in zip(wall.panels, places, strict=True))
    return WallDrawing(
        view_box=_view_box(drawn),
        label=f"Wall {wall.wall.mark}, seen from outside",
        patterns=Markup(svg_patterns(drawn.scale)),
        markup=_groups(drawn),
        targets=targets,
        handle=pole_handle(layouts, places, drawn, wall.wall, lowest_base(layouts)),
    )


def thumbnail(wall: LoadedWall, computed: Mapping[str, Computed], unit: str) -> WallDrawing:
    """The wall without brick and links."""
    layouts = [computed[panel.id].layout for panel in wall.panels]
    drawn = wall_elevation(layouts, wall.wall, scale=_scale(wall), unit=unit, layers=THUMBNAIL, with_strips=False)
    return WallDrawing(_view_box(drawn), f"Wall {wall.wall.mark}", Markup(), _groups(drawn), (), None)


def box_of(wall: LoadedWall) -> str:
    """The view box that the drawing will have, known before any brick is laid out."""
    wide, high = _extent(wall)
    joint = wall.wall.joint.inches
    return _view_box(Drawing("", "", wide - joint, high, AROUND, _scale(wall), ()))


def _extent(wall: LoadedWall) -> tuple[float, float]:
    """Width with a joint behind each panel, and height, inches."""
    bases = [panel.panel.base.inches for panel in wall.panels]
    high = max(base + panel.panel.height for base, panel in zip(bases, wall.panels, strict=True)) - min(bases)
    return sum(panel.panel.width + wall.wall.joint.inches for panel in wall.panels), high


def _scale(wall: LoadedWall) -> Scale:
    wide, high = _extent(wall)
    room = (PAPER_MM[0] - AROUND.left - AROUND.right, PAPER_MM[1] - AROUND.bottom - AROUND.top)
    return Scale(max(wide * 25.4 / room[0], high * 25.4 / room[1]), "to fit")


def _target(panel: LoadedPanel, place: tuple[float, float], drawn: Drawing, unit: str) -> Target:
    value = panel.panel
    size = sized(value.width, value.height, unit)
    x, y = place
    top = drawn.height - y - value.height
    measures = (f"{number:.4f}" for number in (x, top, value.width, value.height))
    words = ", ".join((f"Panel {value.mark}", size, *standing(value, unit)))
    return Target(f"/panels/{panel.id}", words, *measures)


def _view_box(drawn: Drawing) -> str:
    return " ".join(f"{side:.4f}" for side in drawn.view_box)


def _groups(drawn: Drawing) -> Markup:
    groups: Sequence[Markup] = [
        Markup('<g class="layer {}">{}</g>').format(name, Markup(markup)) for name, markup in svg_layers(drawn).items()
    ]
    return Markup("").join(groups)
