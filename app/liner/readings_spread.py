"""What to do about an error: nothing, joints changed by whole ticks, or laying again. Whole numbers of ticks."""

from dataclasses import dataclass
from math import ceil, floor

from app.liner.readings_values import Ahead, Spread
from app.panel.tolerance import TOLERANCE

TICKS = {"in": 1 / 64, "mm": 0.25 / 25.4}
"""Inches by which joints are set: 1/64 in., or half of 0.5 mm, which a hand can set with a rule (common practice)."""

SETTABLE = 1 / 64
"""Inches: the least that a hand can set, in whatever unit (common practice)."""


@dataclass(frozen=True, slots=True)
class Need:
    """What has to go, inches: the error here, what the liner ahead adds to it, give or take `doubt`, and the band."""

    error: float
    coming: float
    band: float
    doubt: float = 0.0

    @property
    def arriving(self) -> float:
        """The error at the next control line if nothing is changed; without a bed temperature the middle of it."""
        return self.error + self.coming

    @property
    def is_right_here(self) -> bool:
        """Whether what is laid is within the band."""
        return abs(self.error) <= self.band + TOLERANCE

    @property
    def is_within(self) -> bool:
        """Whether the liner is right here and, laid on as it is, at the next control line."""
        return self.is_right_here and self.is_right_with(0.0)

    def is_right_with(self, change: float) -> bool:
        """Whether the next control line comes within the band once joints are squeezed by so much together."""
        return abs(self.arriving - change) + self.doubt <= self.band + TOLERANCE

    @property
    def least(self) -> float:
        """The least that the joints ahead have to take, without sign, to reach the band; below zero nothing."""
        return abs(self.arriving) + self.doubt - self.band


def spread_over(need: Need, ahead: Ahead, tick: float) -> Spread | None:
    """The change that brings the next control line nearest to nominal; None where none brings it within the band.

    Every joint changes by whole ticks and never past its give. Spread as thinly as ticks allow: over as many of the
    next joints as there are ticks, each by one, or over all up to the control line. Where the heat ahead makes most of
    the need, over so many that no place on the way is driven past half the band to the other side.
    """
    away, most = abs(need.arriving), most_given(need, ahead, tick)
    if need.least > most + TOLERANCE or need.doubt > need.band + TOLERANCE:
        return None
    if need.least <= TOLERANCE and min(away, most) < SETTABLE / 2:
        return Spread(0, 0, tick)
    wanted = max(round(away / tick), ceil((need.least - TOLERANCE) / tick), 1)
    ticks = min(wanted, round(most / tick))
    return Spread(_joints(need, ahead, ticks), -ticks if need.arriving < 0 else ticks, tick)


def most_given(need: Need, ahead: Ahead, tick: float) -> float:
    """What all joints ahead together can give in whole ticks each against the error that arrives, inches."""
    each = ahead.squeeze if need.arriving > 0 else ahead.stretch
    return ahead.joints * floor((each + TOLERANCE) / tick) * tick


def _joints(need: Need, ahead: Ahead, ticks: int) -> int:
    share = 1 - need.band / (2 * abs(need.coming)) if need.coming else 0.0
    return min(ahead.joints, max(ticks, ceil(ahead.joints * share)))
