"""What the bed page shows, made from one panel of one moment."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from markupsafe import Markup

from app.documents.temperature import LIMITS
from app.drawing.drawing import Drawing
from app.drawing.lettering import lettered
from app.drawing.scales import Scale
from app.drawing.svg import svg_layers, svg_patterns
from app.drawing.views import elevation as brick_view
from app.drawing.views import sheets as sheet_plan
from app.drawing.views.assemble import AROUND
from app.drawing.views.bed import bed
from app.liner.drift import expected_at
from app.liner.values import Checkpoint
from app.panel.faults import Fault
from app.panel.project import Project
from app.site.cautions import DEFERENCE, Caution, Task, cautions_for
from app.web.drift_asked import Asked
from app.web.editor_checkpoints import temperatures
from app.web.pages import Page, Step
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
class Slider:
    """Bed temperature: the ends of the slider, where it stands, what the field beside it takes, the unit in words."""

    low: int
    high: int
    at: int
    bed: str
    coldest: int
    hottest: int
    unit: str


@dataclass(frozen=True, slots=True)
class ReadingRow:
    mark: str
    nominal: str
    reading: str
    at: str


@dataclass(frozen=True, slots=True)
class ReadingGroup:
    """The checkpoints of one tape line, in tape order."""

    words: str
    rows: tuple[ReadingRow, ...]


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
    cautions: tuple[Caution, ...]
    deference: str
    is_guest: bool
    all_panels: str | None


def page_of(
    loaded: LoadedPanel, computed: Computed, shown: str, asked: Asked, *, is_guest: bool, has_list: bool
) -> BedPage:
    """The page with one of SHOWN, the readings at the bed temperature asked for."""
    project, panel = loaded.project, loaded.panel
    slider = _slider(project, asked)
    office = (
        Step("Projects", "/"),
        Step(project.name, f"/projects/{loaded.project_id}"),
        Step(panel.mark, f"/panels/{loaded.id}"),
        Step("Bed view"),
    )
    return BedPage(
        title=f"{panel.mark}, bed view",
        path=() if is_guest else office,
        address=f"/bed/{loaded.id}",
        mark=panel.mark,
        where=f"{project.name}, wall {loaded.wall.mark}",
        revision=f"Rev {loaded.revision}, saved {at(loaded.saved_at)}",
        choices=tuple(Choice(name, words, name == shown) for name, (words, _) in SHOWN.items()),
        shown=shown,
        picture=picture_of(computed, shown, project.length_unit),
        slider=slider,
        readings=readings_of(loaded, computed, asked),
        attention=tuple(finding.text for finding in computed.drift.findings),
        cautions=tuple(caution for task in TASKS[shown] for caution in cautions_for(task)),
        deference=DEFERENCE,
        is_guest=is_guest,
        all_panels="/bed" if has_list else None,
    )


def _slider(project: Project, asked: Asked) -> Slider:
    """At its nearer end for a temperature beyond it."""
    ends, unit = temperatures(project.day), project.temperature_unit
    at = min(max(round(asked.bed), ends.low), ends.high)
    return Slider(ends.low, ends.high, at, f"{asked.bed:g}", *LIMITS[unit], f"°{unit}")


def readings_of(loaded: LoadedPanel, computed: Computed, asked: Asked) -> Readings:
    """What the tape reads at every checkpoint if nothing is corrected; nothing for a temperature that cannot be."""
    if asked.faults:
        return Readings("", "", (), asked.faults)
    unit, bed = loaded.project.length_unit, asked.bed
    points = computed.drift.checkpoints
    groups = (
        ("Across, hook at the bed's left edge", "x"),
        ("Up, hook at the foot", "y"),
    )
    return Readings(
        temperature=f"{bed:g} °{loaded.project.temperature_unit}",
        band=_length(points[0].band, unit) if points else "",
        groups=tuple(
            ReadingGroup(words, tuple(_row(point, bed, unit) for point in points if point.axis == axis))
            for words, axis in groups
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


def _row(point: Checkpoint, bed: float, unit: str) -> ReadingRow:
    reading = _length(expected_at(point, bed), unit)
    return ReadingRow(point.mark, _length(point.nominal, unit), reading, point.control or "joint line")


def _length(inches: float, unit: str) -> str:
    """A reading is given to what a tape shows; nobody types it in again."""
    return lettered(inches, unit).removeprefix("≈ ")
