"""Results of walking lanes: where one walks and kneels while brick is set, and the proof that all brick is in reach."""

from dataclasses import dataclass
from typing import Literal, get_args

import numpy as np
from numpy.typing import NDArray

from app.panel.tolerance import TOLERANCE
from app.site.places import Strip

Direction = Literal["up", "along"]
"""How lanes run: up the panel from its foot, or along its length."""

WayOut = Literal["foot", "top", "left", "right"]
"""The edge of the bed, as seen from the panel's foot, over which one leaves."""

WAYS_OUT: tuple[WayOut, ...] = get_args(WayOut)


@dataclass(frozen=True, slots=True)
class Lane:
    """One lane: its mark ("L1" is filled first), strip, pieces of brick that wait for it, the edge of the bed at which
    it is left, a place for its mark in the face frame, and the marks of the openings that it crosses."""

    number: int
    strip: Strip
    pieces: int
    leaves: WayOut
    at: tuple[float, float]
    crosses: tuple[str, ...]

    @property
    def mark(self) -> str:
        return f"L{self.number}"


@dataclass(frozen=True, slots=True, eq=False)
class Lanes:
    """The lanes of one panel in the order in which they are filled; none where everything is in reach of the edges.

    `lane_of` has for each unit of the layout the number of its lane, 0 for none; `distance` how far its middle is from
    where one stands or kneels, inches; `area` is the brick and joint that the lanes keep open, square inches.
    """

    direction: Direction
    way_out: WayOut
    reach: float
    width: float
    lanes: tuple[Lane, ...]
    lane_of: NDArray[np.int16]
    distance: NDArray[np.float64]
    area: float

    @property
    def farthest(self) -> float:
        """The greatest distance of any piece from its place of standing, inches; 0 for a face without brick."""
        return float(self.distance.max(initial=0.0))

    @property
    def is_within(self) -> bool:
        """Whether every piece is within reach."""
        return self.farthest <= self.reach + TOLERANCE
