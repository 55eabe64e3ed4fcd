"""What checking a reading shows: the form, and the verdicts on what was tried; nothing of it is stored."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from math import nan

from markupsafe import Markup

from app.drawing.svg import svg_layers
from app.drawing.views.readings import reading_history
from app.lengths import LengthError, format_length, parse
from app.liner.readings import judge
from app.liner.readings_ahead import joints_ahead
from app.liner.readings_checked import WAYS, checked
from app.liner.readings_values import KINDS, Reading, Verdict
from app.liner.values import Checkpoint
from app.panel.faults import Fault, Refused
from app.panel.project import Project
from app.web.pages import Page
from app.workflow.compute import Computed

BETWEEN = "|"
"""Stands between the fields of a reading that was tried before."""

TEMPERATURES = ("bed temperature", "tape temperature")

LONGEST_TRY = 160
MOST_TRIES = 40


@dataclass(frozen=True, slots=True)
class Try:
    """One reading as typed."""

    checkpoint: str
    reading: str
    bed: str = ""
    tape: str = ""

    @property
    def text(self) -> str:
        return BETWEEN.join((self.checkpoint, self.reading, self.bed, self.tape))

    @classmethod
    def of(cls, text: str) -> "Try | None":
        """The reading that a page wrote into its own form; None for anything else."""
        fields = [part.strip() for part in text[:LONGEST_TRY].split(BETWEEN)]
        return cls(*fields) if len(fields) == 4 else None


@dataclass(frozen=True, slots=True)
class PointChoice:
    mark: str
    words: str
    is_chosen: bool


@dataclass(frozen=True, slots=True)
class ReadingForm:
    """The form as it stands in a page; no points where there is no brick."""

    address: str
    points: tuple[PointChoice, ...]
    typed: Try
    example: str
    degree: str


@dataclass(frozen=True, slots=True)
class ReadingPlot:
    view_box: str
    label: str
    markup: Markup


@dataclass(frozen=True, slots=True)
class ReadingAnswer:
    """The verdict on one reading, or what is wrong with it; then all that was tried, as a plot along its axis."""

    verdict: str = ""
    is_right: bool = False
    said: str = ""
    instruction: str = ""
    ahead: str = ""
    tried: tuple[str, ...] = ()
    plot: ReadingPlot | None = None
    faults: tuple[Fault, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadingPage(Page):
    """Form and answer as a page of their own, for a browser without script."""

    heading: str
    check: ReadingForm
    answer: ReadingAnswer = field(default_factory=ReadingAnswer)


def reading_form(address: str, computed: Computed, project: Project, typed: Try | None = None) -> ReadingForm:
    """The form with every checkpoint to choose from; `address` is the panel's."""
    points, unit = computed.drift.checkpoints, project.length_unit
    typed = typed or Try("", "")
    choices = tuple(PointChoice(point.mark, _point(point, unit), point.mark == typed.checkpoint) for point in points)
    example = "3810 mm" if unit == "mm" else "12'-6 3/8\""
    return ReadingForm(f"{address}/drift/reading", choices, typed, example, f"°{project.temperature_unit}")


def reading_answer(computed: Computed, project: Project, typed: Try, before: Sequence[Try]) -> ReadingAnswer:
    """The verdict on what was typed; what was tried before stands in the plot, as far as it still is a reading."""
    try:
        now = _judged(computed, project, typed)
    except Refused as refused:
        return ReadingAnswer(tried=tuple(each.text for each in before), faults=refused.faults)
    tried = [(each, verdict) for each in before if (verdict := _judged_or_none(computed, project, each))]
    told = [*(verdict for _, verdict in tried), now]
    texts = (*(each.text for each, _ in tried), typed.text)
    return ReadingAnswer(
        verdict=KINDS[now.kind],
        is_right=now.kind == "hold",
        said=now.said,
        instruction=now.instruction,
        ahead=_ahead(computed, project, now),
        tried=texts[-MOST_TRIES:],
        plot=_plot(computed, project, now.axis, told[-MOST_TRIES:], typed),
    )


def _judged(computed: Computed, project: Project, typed: Try) -> Verdict:
    units = project.length_unit, project.temperature_unit
    layout, liner, drift = computed.layout, project.liner, computed.drift
    reading, faults = _reading(typed, *units)
    try:
        point = checked(reading, layout, liner, drift, *units)
    except Refused as refused:
        told = {fault.path for fault in faults}
        raise Refused([*faults, *(fault for fault in refused.faults if fault.path not in told)]) from None
    if faults:
        raise Refused(faults)
    return judge(reading, point, joints_ahead(layout, liner, drift, point), *units)


def _judged_or_none(computed: Computed, project: Project, typed: Try) -> Verdict | None:
    try:
        return _judged(computed, project, typed)
    except Refused:
        return None


def _reading(typed: Try, unit: str, degree: str) -> tuple[Reading, list[Fault]]:
    """What was typed as values, and a fault for every field that is none; such a value is no number, such a
    temperature not taken."""
    faults: list[Fault] = []
    value = nan
    try:
        value = parse(typed.reading, unit).inches
    except LengthError as error:
        faults.append(Fault("reading", typed.reading or "nothing", f"{error.expected}, for example {error.example}"))
    taken = [_temperature(name, text, degree) for name, text in zip(TEMPERATURES, (typed.bed, typed.tape), strict=True)]
    bed, tape = (None if isinstance(one, Fault) else one for one in taken)
    faults += [one for one in taken if isinstance(one, Fault)]
    return Reading(typed.checkpoint.upper(), value, bed, tape), faults


def _temperature(name: str, text: str, degree: str) -> float | Fault | None:
    """None where it was not taken."""
    number = text.removesuffix(degree).removesuffix("°").strip()
    try:
        return float(number) if number else None
    except ValueError:
        return Fault(name, text, f"a temperature in °{degree}, for example 94")


def _point(point: Checkpoint, unit: str) -> str:
    what = f", {point.control}" if point.control else ""
    return f"{point.mark}, {_length(point.nominal, unit)}{what}"


def _ahead(computed: Computed, project: Project, verdict: Verdict) -> str:
    point = next(point for point in computed.drift.checkpoints if point.mark == verdict.mark)
    ahead = joints_ahead(computed.layout, project.liner, computed.drift, point)
    if not ahead.control:
        return "No control line lies ahead on this axis."
    mark = f"{ahead.mark}, " if ahead.mark else ""
    joints = "1 joint" if ahead.joints == 1 else f"{ahead.joints} joints"
    return f"Next: {mark}{ahead.control} at {_length(ahead.nominal, project.length_unit)}, {joints} on."


def _plot(computed: Computed, project: Project, axis: str, told: Sequence[Verdict], typed: Try) -> ReadingPlot:
    panel = computed.layout.panel
    reading, _ = _reading(typed, project.length_unit, project.temperature_unit)
    drawn = reading_history(
        computed.drift,
        axis,
        told,
        reach=panel.width if axis == "x" else panel.height,
        temperature=reading.bed_temperature,
        unit=project.length_unit,
        degree=project.temperature_unit,
        title=f"{panel.mark}, readings tried {WAYS[axis]} the panel, not recorded",
    )
    groups = [
        Markup('<g class="layer {}">{}</g>').format(name, Markup(markup)) for name, markup in svg_layers(drawn).items()
    ]
    view_box = " ".join(f"{side:.4f}" for side in drawn.view_box)
    return ReadingPlot(view_box, drawn.title, Markup("").join(groups))


def _length(inches: float, unit: str) -> str:
    return format_length(inches, unit).removeprefix("≈ ")
