"""What the bed page shows, made from one panel of one moment."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from markupsafe import Markup

from app.drawing.drawing import Drawing
from app.drawing.scales import Scale
from app.drawing.svg import svg_layers, svg_patterns
from app.drawing.views import elevation as brick_view
from app.drawing.views import sheets as sheet_plan
from app.drawing.views.assemble import AROUND
from app.drawing.views.bed import bed
from app.liner.drift_words import hook_words
from app.panel.faults import Fault
from app.site.cautions import Task
from app.web.caution_list import Cautions, cautions_of
from app.web.drift_asked import Asked
from app.web.drift_rows import PointRow, band_words, point_rows
from app.web.page_links import panel_path
from app.web.pages import Page
from app.web.warmth import Slider, slider_of
from app.web.words import at
from app.workflow.compute import Computed
from app.workflow.loading import LoadedPanel

WORDS_BELOW = {"title", "key", "sheet_key"}
"""The page says in its own words what a sheet of paper says under the drawing."""

SET_OUT = ("concrete", "openings", "outline", "pole", "tape", "dimensions", "orientation")
SHEETS = tuple(layer for layer in sheet_plan.LAYERS if layer not in {*WORDS_BELOW, "checkpoints"})
BRICK = tuple(
    layer for layer in brick_view.LAYERS if layer not in {*WORDS_BELOW, "sheets", "sheet_numbers", "checkpoints"}
)
CHECKPOINTS = ("concrete", "openings", "sheets", "outline", "pole", "tape", "dimensions", "checkpoints", "orientation")
SHOWN: Mapping[str, tuple[str, tuple[str, ...]]] = {
    "set-out": ("Set out", SET_OUT),
    "sheets": ("Sheets", SHEETS),
    "brick": ("Brick", BRICK),
    "checkpoints": ("Checkpoints", CHECKPOINTS),
}
"""What each of the big buttons shows: its words, and the layers from the lowest up."""

TASKS: Mapping[str, tuple[Task, ...]] = {
    "set-out": ("walking on the bed",),
    "sheets": ("walking on the bed", "cutting liner", "fixing liner"),
    "brick": ("walking on the bed", "sawing brick"),
    "checkpoints": ("walking on the bed",),
}

PAPER_MM = (160.0, 130.0)
"""The drawing is made as if for this much paper, so that its letters read well on a tablet."""

MARGINS = replace(AROUND, bottom=34.0)


@dataclass(frozen=True, slots=True)
class Choice:
    """One of the big buttons."""

    name: str
    words: str
    is_shown: bool


@dataclass(frozen=True, slots=True)
class Layer:
    name: str
    markup: Markup


@dataclass(frozen=True, slots=True)
class Picture:
    """The drawing as groups of one svg."""

    view_box: str
    patterns: Markup
    layers: tuple[Layer, ...]
    label: str


@dataclass(frozen=True, slots=True)
class ReadingGroup:
    """The checkpoints of one tape line, in tape order."""

    words: str
    rows: tuple[PointRow, ...]


@dataclass(frozen=True, slots=True)
class Readings:
    """Every checkpoint at one bed temperature; none with the `faults` of what was asked for."""

    temperature: str
    band: str
    groups: tuple[ReadingGroup, ...]
    faults: tuple[Fault, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class BedPage(Page):
    """The bed view of one panel."""

    address: str
    mark: str
    where: str
    revision: str
    choices: tuple[Choice, ...]
    shown: str
    picture: Picture
    slider: Slider
    readings: Readings
    attention: tuple[str, ...]
    cautions: Cautions
    is_guest: bool
    all_panels: str | None


def page_of(
    loaded: LoadedPanel, computed: Computed, shown: str, asked: Asked, *, is_guest: bool, has_list: bool
) -> BedPage:
    """The page with one of SHOWN, the readings at the bed temperature asked for."""
    project, panel = loaded.project, loaded.panel
    return BedPage(
        title=f"{panel.mark}, bed view",
        path=() if is_guest else panel_path(loaded, "Bed view"),
        address=f"/bed/{loaded.id}",
        mark=panel.mark,
        where=f"{project.name}, wall {loaded.wall.mark}",
        revision=f"Rev {loaded.revision}, saved {at(loaded.saved_at)}",
        choices=tuple(Choice(name, words, name == shown) for name, (words, _) in SHOWN.items()),
        shown=shown,
        picture=picture_of(computed, shown, project.length_unit),
        slider=slider_of(project, asked, f"{asked.bed:g}"),
        readings=readings_of(loaded, computed, asked),
        attention=tuple(finding.text for finding in computed.drift.findings),
        cautions=cautions_of(*TASKS[shown]),
        is_guest=is_guest,
        all_panels="/bed" if has_list else None,
    )


def readings_of(loaded: LoadedPanel, computed: Computed, asked: Asked) -> Readings:
    """What the tape reads at every checkpoint if nothing is corrected; nothing for a temperature that cannot be."""
    if asked.faults:
        return Readings("", "", (), asked.faults)
    rows = point_rows(computed, asked)
    return Readings(
        temperature=f"{asked.bed:g} °{loaded.project.temperature_unit}",
        band=band_words(computed) if rows else "",
        groups=tuple(
            ReadingGroup(f"{words}, {hook_words(loaded.panel.laying, axis)}", tuple(r for r in rows if r.axis == axis))
            for words, axis in (("Across", "x"), ("Up", "y"))
        ),
    )


def picture_of(computed: Computed, shown: str, unit: str) -> Picture:
    """The bed drawing with the layers of one button."""
    layout = computed.layout
    room = (PAPER_MM[0] - MARGINS.left - MARGINS.right, PAPER_MM[1] - MARGINS.bottom - MARGINS.top)
    scale = Scale(max(layout.panel.width * 25.4 / room[0], layout.panel.height * 25.4 / room[1]), "to fit")
    words, layers = SHOWN[shown]
    drift = computed.drift if "checkpoints" in layers else None
    if shown == "sheets":
        drawn = sheet_plan.sheet_view(layout, computed.plan, scale=scale, unit=unit, layers=layers)
    else:
        drawn = bed(layout, plan=computed.plan, drift=drift, scale=scale, unit=unit, layers=layers)
    label = f"Bed view of panel {layout.panel.mark}, mirrored: {words.lower()}"
    return _picture(replace(drawn, margins=MARGINS), label)


def _picture(drawn: Drawing, label: str) -> Picture:
    return Picture(
        view_box=" ".join(f"{side:.4f}" for side in drawn.view_box),
        patterns=Markup(svg_patterns(drawn.scale)),
        layers=tuple(Layer(name, Markup(markup)) for name, markup in svg_layers(drawn).items()),
        label=label,
    )
