"""What the Drift screen shows: the page, and the part that follows the slider."""

from dataclasses import dataclass

from app.drawing.views.growth import Warmth
from app.liner.drift_words import hook_words
from app.liner.growth import free_span
from app.panel.faults import Fault
from app.panel.tolerance import TOLERANCE
from app.site.cautions import Task
from app.web.caution_list import Cautions, cautions_of
from app.web.drift_asked import Asked
from app.web.drift_plots import Plot, plots_of
from app.web.drift_rows import (
    AxisRow,
    PointRow,
    SpanRow,
    TableOfTape,
    advice_rows,
    band_words,
    point_rows,
    span_rows,
    tape_rows,
)
from app.web.editor_checkpoints import temperatures
from app.web.page_links import PageLink, panel_links, panel_path
from app.web.pages import Page
from app.web.reading_check_view import ReadingForm, Try, reading_form
from app.web.warmth import Slider, slider_of
from app.web.words import counted, listed
from app.workflow.compute import Computed
from app.workflow.loading import LoadedPanel
from app.workflow.steps import Steps

TASKS: tuple[Task, ...] = ("walking on the bed", "fixing liner")


@dataclass(frozen=True, slots=True)
class DriftNow:
    """Everything at one bed temperature; `fields` go with every edit made from here."""

    address: str
    degrees: str
    summary: str
    is_right: bool
    tape_words: str
    band: str
    plots: tuple[Plot, ...]
    points: tuple[PointRow, ...]
    spans: tuple[SpanRow, ...]
    advice: tuple[AxisRow, ...]
    fields: tuple[tuple[str, str], ...]
    undo: str | None


@dataclass(frozen=True, slots=True)
class RefusedPart:
    faults: tuple[Fault, ...]


@dataclass(frozen=True, slots=True)
class NowPart:
    now: DriftNow


@dataclass(frozen=True, slots=True)
class Tape:
    """The story pole and the tape at one bed temperature."""

    degrees: str
    tables: tuple[TableOfTape, ...]


@dataclass(frozen=True, slots=True)
class TapePart:
    tape: Tape


@dataclass(frozen=True, slots=True, kw_only=True)
class DriftPage(Page):
    """The whole page."""

    address: str
    links: tuple[PageLink, ...]
    mark: str
    hooks: str
    slider: Slider
    now: DriftNow
    tape: Tape
    faults: tuple[Fault, ...]
    attention: tuple[str, ...]
    check: ReadingForm
    cautions: Cautions


def page_of(loaded: LoadedPanel, computed: Computed, asked: Asked, steps: Steps, typed: tuple[str, str]) -> DriftPage:
    """The page at the temperatures asked for; `typed` stands in the fields where that was refused."""
    panel, project, address = loaded.panel, loaded.project, f"/panels/{loaded.id}"
    return DriftPage(
        title=f"Drift of {panel.mark}, {project.name}",
        path=panel_path(loaded, "Drift"),
        address=address,
        links=panel_links(loaded.id, panel.mark, "Drift"),
        mark=panel.mark,
        hooks=f"Along: {hook_words(panel.laying, 'x')}. Up: {hook_words(panel.laying, 'y')}.",
        slider=slider_of(project, asked, *typed),
        now=now_of(loaded, computed, asked, steps),
        tape=tape_of(computed, asked),
        faults=asked.faults,
        attention=tuple(finding.text for finding in computed.drift.findings),
        cautions=cautions_of(*TASKS),
        check=reading_form(address, computed, project, Try("", "", f"{asked.bed:g}", typed[1])),
    )


def now_of(loaded: LoadedPanel, computed: Computed, asked: Asked, steps: Steps) -> DriftNow:
    """The part that the slider repaints."""
    points, beyond = point_rows(computed, asked), _beyond(computed, asked.bed)
    unit = loaded.project.temperature_unit
    fields = [("base_revision", str(loaded.revision)), ("then", "drift"), ("temperature", f"{asked.bed:g}")]
    fields += [] if asked.tape is None else [("tape", f"{asked.tape:g}")]
    return DriftNow(
        address=f"/panels/{loaded.id}",
        degrees=f"{asked.bed:g} °{unit}",
        summary=_summary(points, beyond),
        is_right=not beyond and all(point.is_right for point in points),
        tape_words=_tape_words(asked, unit),
        band=band_words(computed),
        plots=plots_of(computed, _warmth(computed, asked)),
        points=points,
        spans=span_rows(computed),
        advice=advice_rows(computed),
        fields=tuple(fields),
        undo=steps.undo,
    )


def tape_of(computed: Computed, asked: Asked) -> Tape:
    """Every course and head joint; its page asks for it once the slider rests, as it is long."""
    return Tape(f"{asked.bed:g} °{computed.given.temperature_unit}", tape_rows(computed, asked))


def _summary(points: tuple[PointRow, ...], beyond: list[str]) -> str:
    """`beyond` names what ends the spans that drift past the band before it."""
    wrong = sum(not point.is_right for point in points)
    if wrong:
        return f"{wrong} of {counted(len(points), 'checkpoint')} past the band if nothing is corrected."
    if beyond:
        return f"Every checkpoint is within the band, but the liner right before {listed(beyond)} is past it."
    return f"All {counted(len(points), 'checkpoint')} within the band without correction."


def _beyond(computed: Computed, bed: float) -> list[str]:
    """What ends the spans that are past the band at their ends, where no checkpoint shows it: there growth ends."""
    liner = computed.given.liner
    most = free_span(liner, bed)
    return list(
        dict.fromkeys(span.ended_by for span in computed.drift.spans if span.end - span.start > most + TOLERANCE)
    )


def _tape_words(asked: Asked, unit: str) -> str:
    if asked.tape is None:
        return "Readings of a tape that is right; give its temperature to have them as a steel tape shows them."
    standard = 20 if unit == "C" else 68
    return f"Readings as a steel tape at {asked.tape:g} °{unit} shows them; it is right at {standard} °{unit}."


def _warmth(computed: Computed, asked: Asked) -> Warmth:
    day, ends = computed.given.day, temperatures(computed.given.day)
    return Warmth(day.bed_low, day.bed_high, asked.bed, ends.low, ends.high, computed.given.temperature_unit)
