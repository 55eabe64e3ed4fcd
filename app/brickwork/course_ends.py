"""Pieces that the courses of a face end with at its upright edges."""

from dataclasses import dataclass

import numpy as np

from app.brickwork.lattice import Flags, Floats, Ints
from app.brickwork.layout import Layout
from app.panel.tolerance import TOLERANCE


@dataclass(frozen=True, slots=True)
class Ends:
    """End pieces at one edge, from the lowest up: which units, their feet, and how far each stops from the edge."""

    unit: Ints
    foot: Floats
    gap: Floats


class CourseEnds:
    """End pieces at edges of one layout; edges one over the other are found together, so ask for as many as needed."""

    def __init__(self, layout: Layout) -> None:
        units = layout.units
        self._layout = layout
        self._far: Floats = units.x + units.width
        self._level: Flags = np.array([not region.bond.turn for region in layout.regions], dtype=np.bool_)
        self._joint = max((region.size.head_joint.inches for region in layout.regions), default=0.0)
        self._beside: dict[tuple[float, bool], Ints] = {}

    def at(self, x: float, starts: bool, low: float, high: float) -> Ends:
        """Pieces whose whole height stands between `low` and `high` and that start, or end, at `x`; inches.

        A piece too thin to be a brick is none, so the next one ends the course. None in a turned bond.
        """
        units, near = self._layout.units, self._units_beside(x, starts)
        foot, top = units.y[near], units.y[near] + units.height[near]
        chosen = near[(foot >= low - TOLERANCE) & (top <= high + TOLERANCE)]
        chosen = chosen[np.argsort(units.y[chosen], kind="stable")]
        gap = units.x[chosen] - x if starts else x - self._far[chosen]
        return Ends(chosen, units.y[chosen], gap)

    def _units_beside(self, x: float, starts: bool) -> Ints:
        """Less than a joint and the smallest cut from `x`: the unit after the smallest end piece is farther away."""
        key = (round(x, 6), starts)
        if key not in self._beside:
            gap = self._layout.units.x - x if starts else x - self._far
            reach = self._joint + self._layout.smallest_cut
            found = np.flatnonzero((gap > -2 * TOLERANCE) & (gap < reach - 2 * TOLERANCE))
            self._beside[key] = found[self._level[self._layout.units.zone[found]]]
        return self._beside[key]
