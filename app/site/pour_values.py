"""Results of the pour: bands of concrete in order, vibrator points as they are walked, the head's depth."""

from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from app.brickwork.findings import Finding
from app.site.places import Strip

Corner = tuple[float, float]

CUBIC_INCHES_PER_CUBIC_YARD = 36.0**3
CUBIC_METRES_PER_CUBIC_INCH = 0.0254**3
"""Both exact by the international yard agreement of 1959."""


@dataclass(frozen=True, slots=True)
class Band:
    """One band of concrete: its rings (holes included) and a place for its number in the face frame, inches.

    `after` is the band placed before it that it touches, None for the one with the first drop of a part of the panel;
    `begins` is where the stream begins, on the edge of that band or in the first drop, and `heading` the way over that
    edge into this band, of length 1, or 0 for a first drop. `volume` is net, cubic inches.
    """

    number: int
    rings: tuple[tuple[Corner, ...], ...]
    at: Corner
    after: int | None
    begins: Corner
    heading: Corner
    volume: float

    @property
    def cubic_yards(self) -> float:
        return self.volume / CUBIC_INCHES_PER_CUBIC_YARD

    @property
    def cubic_metres(self) -> float:
        return self.volume * CUBIC_METRES_PER_CUBIC_INCH


@dataclass(frozen=True, slots=True)
class FirstDrop:
    """Where the first concrete of band `band` goes: a square of the grid at the form's edge, `plain` of it without
    brick (0 to 1), and in words how it was chosen and what to do there."""

    band: int
    strip: Strip
    plain: float
    words: str


@dataclass(frozen=True, slots=True, eq=False)
class Pass:
    """One row of vibrator points in walking order, shape (points, 2), face frame, inches, in band `band`."""

    number: int
    band: int
    points: NDArray[np.float64]


@dataclass(frozen=True)
class Pour:
    """How one panel's concrete is placed and vibrated.

    `step` is the distance of vibrator points across and up, inches, at most `grid`; `over_brick` is the concrete over
    the backs of the bricks, and `depth` how far below the surface the head goes, None where the panel is too thin for
    it: the findings say why. `clearance` is what the head keeps from the brick.
    """

    grid: float
    step: tuple[float, float]
    over_brick: float
    clearance: float
    depth: float | None
    bands: tuple[Band, ...]
    drops: tuple[FirstDrop, ...]
    passes: tuple[Pass, ...]
    findings: tuple[Finding, ...]

    @property
    def insertions(self) -> int:
        """How often the vibrator's head goes in."""
        return sum(len(one.points) for one in self.passes)

    @property
    def volume(self) -> float:
        """Net concrete of all bands, cubic inches, for information."""
        return sum(band.volume for band in self.bands)

    @cached_property
    def points(self) -> NDArray[np.float64]:
        """All vibrator points in walking order, shape (points, 2), face frame, inches."""
        return np.concatenate([np.zeros((0, 2)), *(one.points for one in self.passes)])
