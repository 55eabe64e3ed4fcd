"""The checkpoints at one bed temperature: what the tape should read at each."""

from dataclasses import dataclass
from math import floor

from app.lengths import SMALLEST_MARK, format_length
from app.liner.drift import expected_at
from app.liner.values import Drift
from app.panel.project import Day, Project


@dataclass(frozen=True, slots=True)
class Temperatures:
    """The slider: its ends lie a third of the day's range beyond the day."""

    low: int
    high: int
    at: int


@dataclass(frozen=True, slots=True)
class CheckpointRow:
    mark: str
    nominal: str
    reading: str
    control: str


@dataclass(frozen=True, slots=True)
class Checkpoints:
    temperature: str
    words: str
    tick: str
    rows: tuple[CheckpointRow, ...]


def temperatures(day: Day) -> Temperatures:
    """A slider over the day's range and somewhat more, at its warmest."""
    beyond = max(5.0, (day.bed_high - day.bed_low) / 3)
    return Temperatures(round(day.bed_low - beyond), round(day.bed_high + beyond), round(day.bed_high))


def checkpoints_part(drift: Drift, project: Project, temperature: float) -> Checkpoints:
    """All checkpoints in tape order, across first."""
    unit, degrees = project.length_unit, f"{temperature:g} °{project.temperature_unit}"
    rows = tuple(
        CheckpointRow(
            point.mark,
            format_length(point.nominal, unit),
            format_length(expected_at(point, temperature), unit).removeprefix("≈ "),
            point.control,
        )
        for point in drift.checkpoints
    )
    tick = 'to 1/16"' if unit == "in" else "to the mm"
    return Checkpoints(degrees, f"on the bed; the tape's hook at the starting corner{_span(drift, unit)}", tick, rows)


def _span(drift: Drift, unit: str) -> str:
    if drift.worst_span is None:
        return ""
    mark = SMALLEST_MARK[unit]
    most = format_length(floor(drift.worst_span / mark + 1e-9) * mark, unit).removeprefix("≈ ")
    return f"; no two checks farther apart than {most}"
