"""The checkpoints at one bed temperature: what the tape should read at each."""

from dataclasses import dataclass

from app.lengths import format_length
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
    return Checkpoints(degrees, f"on the bed; the tape's hook at the starting corner{_span(drift, unit)}", rows)


def _span(drift: Drift, unit: str) -> str:
    if drift.worst_span is None:
        return ""
    return f"; no two checks farther apart than {format_length(drift.worst_span, unit).removeprefix('≈ ')}"
