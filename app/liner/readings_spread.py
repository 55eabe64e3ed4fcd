"""What to do about an error: nothing, joints changed by whole ticks, or laying again. Whole numbers of ticks."""

from dataclasses import dataclass
from math import ceil, floor

from app.liner.readings_values import Ahead, Spread
from app.panel.tolerance import TOLERANCE

TICKS = {"in": 1 / 64, "mm": 0.5 / 25.4}
"""Inches that a hand can set with a rule: 1/64 in., or 0.5 mm (common practice)."""


@dataclass(frozen=True, slots=True)
class Need:
    """What has to go, inches: the error here, what the liner ahead adds to it, and the band either way."""

    error: float
    coming: float
    band: float

    @property
    def arriving(self) -> float:
        """The error at the next control line if nothing is changed."""
        return self.error + self.coming

    @property
    def is_right_here(self) -> bool:
        """Whether what is laid is within the band."""
        return abs(self.error) <= self.band + TOLERANCE

    @property
    def is_within(self) -> bool:
        """Whether the liner is right here and, laid on as it is, at the next control line."""
        return self.is_right_here and abs(self.arriving) <= self.band + TOLERANCE


def spread_over(need: Need, ahead: Ahead, tick: float) -> Spread | None:
    """The change that brings the next control line within the band, nearest to nominal; None where none does.

    Spread as thinly as ticks allow: over as many of the next joints as there are ticks, each by one, or over all up to
    the control line. Where the heat ahead makes most of the need, over so many that no place on the way is driven past
    half the band to the other side.
    """
    stretched, squeezed = most_ticks(ahead, tick)
    low = max(-stretched, ceil((need.arriving - need.band - TOLERANCE) / tick))
    high = min(squeezed, floor((need.arriving + need.band + TOLERANCE) / tick))
    if low > high:
        return None
    ticks = min(max(round(need.arriving / tick), low), high)
    return Spread(_joints(need, ahead, abs(ticks)), ticks, tick)


def most_ticks(ahead: Ahead, tick: float) -> tuple[int, int]:
    """Ticks by which all joints ahead together may be stretched and squeezed, each by whole ticks within its give."""
    stretched, squeezed = (floor((give + TOLERANCE) / tick) for give in (ahead.stretch, ahead.squeeze))
    return ahead.joints * stretched, ahead.joints * squeezed


def _joints(need: Need, ahead: Ahead, ticks: int) -> int:
    share = 1 - need.band / (2 * abs(need.coming)) if need.coming else 0.0
    return min(ahead.joints, max(ticks, ceil(ahead.joints * share)))
