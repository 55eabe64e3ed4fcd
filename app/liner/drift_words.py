"""Laying windows and advice on fixing lines in words; lengths in the project's unit."""

from dataclasses import dataclass
from math import ceil, floor

from app.lengths import format_length
from app.liner.fixing_advice import MOST, FixingAdvice, SpanAdvice
from app.liner.values import LayingWindow
from app.panel.laying import Laying
from app.panel.project import Day

NARROW, ENDLESS = 3.0, 300.0
"""Degrees: a window narrower than the one is said to a tenth of a degree, one wider than the other holds any bed."""


@dataclass(frozen=True, slots=True)
class Units:
    """How lengths ("in", "mm") and temperatures ("F", "C") are written."""

    length: str = "in"
    temperature: str = "F"

    def said(self, inches: float) -> str:
        """A length to what a tape shows, without a mark for what is rounded."""
        return format_length(inches, self.length).removeprefix("\u2248 ")

    def degrees(self, temperature: float) -> str:
        return f"{_plain(temperature)} °{self.temperature}"


def window_said(low: float, high: float, units: Units) -> str:
    """A window of bed temperature, rounded inwards: "between 59 and 81 \u00b0F"."""
    step = 0.1 if high - low < NARROW else 1.0
    inner = round(ceil(low / step - 1e-9) * step, 1), round(floor(high / step + 1e-9) * step, 1)
    return f"between {_plain(inner[0])} and {units.degrees(inner[1])}"


def _plain(temperature: float) -> str:
    return f"{temperature:g}".replace("-", "\u2212")


def point_window_words(window: tuple[float, float] | None, units: Units) -> str:
    """When a checkpoint is right by itself: a window, or "always"."""
    return "always" if window is None or window[1] - window[0] > ENDLESS else window_said(*window, units)


def span_name(span: LayingWindow, units: Units) -> str:
    """The span's ends with their running dimensions: `starting corner to strip R1, 0" to 10'-0"`."""
    ends = f"{units.said(span.start)} to {units.said(span.end)}"
    return f"{span.held_by} to {span.ended_by}, {ends}"


def window_words(low: float | None, high: float | None, day: Day, units: Units) -> str:
    """When something with this window may be laid on this day, in one sentence."""
    if low is None or high is None or high - low > ENDLESS:
        return "May be laid at any bed temperature."
    if low <= day.bed_low and day.bed_high <= high:
        return f"May be laid all day; right {window_said(low, high, units)}."
    told = f"Lay it while the bed is {window_said(low, high, units)}"
    if high < day.bed_low or low > day.bed_high:
        return f"{told}; the day is expected to stay {'warmer' if high < day.bed_low else 'colder'}."
    return f"{told}; at other times correct by the tape."


def advice_words(advice: SpanAdvice, reference: float, units: Units) -> str:
    """What is wrong with a span, and what all its lines together do."""
    grows = "grows" if advice.temperature > reference else "shrinks"
    axis = "Along" if advice.span.axis == "x" else "Up"
    told = (
        f"{axis} the panel from {advice.span.held_by} to {advice.span.ended_by} the liner {grows} by up to"
        f" {units.said(advice.grows)} at {units.degrees(advice.temperature)}; the tolerance is"
        f" {units.said(advice.tolerance)}."
    )
    if not advice.lines:
        return f"{told} Fixing lines do not cure that: more than {MOST}, or between joints, would be needed."
    count = len(advice.lines)
    lines = "One fixing line keeps" if count == 1 else f"{count} fixing lines keep"
    return f"{told} {lines} it within {units.said(advice.least)}."


def line_words(line: FixingAdvice, units: Units) -> str:
    """Where the fixing line goes."""
    running = "Upright" if line.axis == "x" else "Level"
    return f"{running} fixing line {units.said(line.running)} from the tape's hook"


def effect_words(line: FixingAdvice, units: Units) -> str:
    """What the line alone saves."""
    at = line.mark or units.said(line.at)
    return f"By itself: growth at {at} falls from {units.said(line.before)} to {units.said(line.after)}."


def hook_words(laying: Laying, axis: str) -> str:
    """Where the foreman's tape is hooked for one axis ("x", "y"), and which way it runs, seen on the bed."""
    if axis == "x":
        side, to = ("left", "right") if laying.corner.endswith("left") else ("right", "left")
        return f"hook at the bed's {side}, running to the {to} as you stand at the panel's foot"
    return "hook at the foot, running up" if "lower" in laying.corner else "hook at the top, running down to the foot"
