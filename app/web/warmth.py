"""The slider of bed temperatures and the fields beside it, as every page of a panel has them."""

from dataclasses import dataclass

from app.panel.project import Project
from app.panel.temperatures import LIMITS
from app.web.drift_asked import Asked
from app.web.editor_checkpoints import temperatures


@dataclass(frozen=True, slots=True)
class Slider:
    """Ends of the slider and where it stands; the bed's and the tape's temperature as typed or as taken; what can be a
    temperature at all; the unit in words."""

    low: int
    high: int
    at: int
    bed: str
    tape: str
    coldest: int
    hottest: int
    unit: str


def slider_of(project: Project, asked: Asked, bed: str, tape: str = "") -> Slider:
    """At its nearer end for a temperature beyond it."""
    ends, unit = temperatures(project.day), project.temperature_unit
    at = min(max(round(asked.bed), ends.low), ends.high)
    return Slider(ends.low, ends.high, at, bed, tape, *LIMITS[unit], f"°{unit}")
