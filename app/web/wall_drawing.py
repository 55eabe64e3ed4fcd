"""Walls drawn small for pages: every panel is a link to its editor."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from markupsafe import Markup

from app.drawing.drawing import Drawing
from app.drawing.lettering import fitting
from app.drawing.marks import NORMAL, SMALL
from app.drawing.scales import Scale
from app.drawing.svg import svg_layers, svg_patterns
from app.drawing.wall import AROUND, panel_places, wall_elevation
from app.lengths import format_length
from app.web.words import sized
from app.workflow.compute import Computed
from app.workflow.loading import LoadedPanel, LoadedWall

PAPER_MM = (260.0, 90.0)
"""A wall is drawn as if for this much paper, so that marks read well in a browser window."""

THUMBNAIL = ("concrete", "openings", "outline")
WALL = ("concrete", "openings", "brick", "cuts", "outline", "small")

UNDER_MM, LINE_MM, BETWEEN_MM = 4.5, 4.5, 2.0
"""From a panel's foot down to its mark, from line to line, and between two marks, mm."""


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
class Label:
    """One line of words under a panel: its mark as far as there is room, its base where that is not 0."""

    words: str
    x: str
    y: str
    size: str


@dataclass(frozen=True, slots=True)
class WallDrawing:
    """One svg: groups of marks, words under each panel, and a link over it."""

    view_box: str
    label: str
    patterns: Markup
    markup: Markup
    targets: tuple[Target, ...]
    labels: tuple[Label, ...]


def wall_drawing(wall: LoadedWall, computed: Mapping[str, Computed], unit: str) -> WallDrawing:
    """The wall with its brick; raises KeyError for a panel that is not in `computed`."""
    layouts = [computed[panel.id].layout for panel in wall.panels]
    drawn = wall_elevation(layouts, wall.wall, scale=_scale(wall), unit=unit, layers=WALL)
    places = panel_places(layouts, wall.wall)
    targets = tuple(_target(panel, place, drawn, unit) for panel, place in zip(wall.panels, places, strict=True))
    labels = tuple(
        label for panel, place in zip(wall.panels, places, strict=True) for label in _labels(panel, place, drawn, unit)
    )
    return WallDrawing(
        view_box=_view_box(drawn),
        label=f"Wall {wall.wall.mark}, seen from outside",
        patterns=Markup(svg_patterns(drawn.scale)),
        markup=_groups(drawn),
        targets=targets,
        labels=labels,
    )


def thumbnail(wall: LoadedWall, computed: Mapping[str, Computed], unit: str) -> WallDrawing:
    """The wall without brick and links."""
    layouts = [computed[panel.id].layout for panel in wall.panels]
    drawn = wall_elevation(layouts, wall.wall, scale=_scale(wall), unit=unit, layers=THUMBNAIL, with_strips=False)
    return WallDrawing(_view_box(drawn), f"Wall {wall.wall.mark}", Markup(), _groups(drawn), (), ())


def _scale(wall: LoadedWall) -> Scale:
    wide = sum(panel.panel.width + wall.wall.joint.inches for panel in wall.panels)
    bases = [panel.panel.base.inches for panel in wall.panels]
    high = max(base + panel.panel.height for base, panel in zip(bases, wall.panels, strict=True)) - min(bases)
    room = (PAPER_MM[0] - AROUND.left - AROUND.right, PAPER_MM[1] - AROUND.bottom - AROUND.top)
    return Scale(max(wide * 25.4 / room[0], high * 25.4 / room[1]), "to fit")


def _target(panel: LoadedPanel, place: tuple[float, float], drawn: Drawing, unit: str) -> Target:
    value = panel.panel
    size = sized(value.width, value.height, unit)
    x, y = place
    top = drawn.height - y - value.height
    measures = (f"{number:.4f}" for number in (x, top, value.width, value.height))
    return Target(f"/panels/{panel.id}", f"Panel {value.mark}, {size}", *measures)


def _labels(panel: LoadedPanel, place: tuple[float, float], drawn: Drawing, unit: str) -> Iterator[Label]:
    """Words that fit under their own panel, so that no two run into each other."""
    inches, value = drawn.scale.inches_per_mm, panel.panel
    middle, foot = place[0] + value.width / 2, drawn.height - place[1]
    room = value.width / inches - BETWEEN_MM
    lines = [value.mark, *([f"base {format_length(value.base, unit)}"] if value.base.nm else [])]
    for k, words in enumerate(lines):
        size = NORMAL if k == 0 else SMALL
        y = foot + (UNDER_MM + k * LINE_MM) * inches
        yield Label(fitting(words, room, size), f"{middle:.4f}", f"{y:.4f}", f"{size * inches:.4f}")


def _view_box(drawn: Drawing) -> str:
    return " ".join(f"{side:.4f}" for side in drawn.view_box)


def _groups(drawn: Drawing) -> Markup:
    groups: Sequence[Markup] = [
        Markup('<g class="layer {}">{}</g>').format(name, Markup(markup)) for name, markup in svg_layers(drawn).items()
    ]
    return Markup("").join(groups)
