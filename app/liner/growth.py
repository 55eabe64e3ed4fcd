"""Growth of liner with temperature: free from the line that holds it before, along each axis on its own."""

from collections.abc import Sequence
from math import inf

import numpy as np

from app.brickwork.lattice import Floats
from app.liner.lines import Line
from app.panel.project import Day, Liner
from app.panel.tolerance import TOLERANCE


def growth(length: float, expansion_per_degree: float, degrees: float) -> float:
    """Free growth of a length over a rise in temperature, in the unit of the length; negative for a fall."""
    return length * expansion_per_degree * degrees


def worst_temperature(day: Day, liner: Liner) -> float:
    """The end of the day's range farthest from the liner's reference temperature, in the project's unit."""
    return max((day.bed_low, day.bed_high), key=lambda bed: abs(bed - liner.reference_temperature))


def free_span(liner: Liner, temperature: float) -> float:
    """The length in inches over which free growth at this bed temperature uses up the tolerance; infinite for none."""
    each = abs(growth(1.0, liner.expansion_per_degree, temperature - liner.reference_temperature))
    return liner.tolerance.inches / each if each > 0 else inf


def free_lengths(held: Sequence[Line], running: Floats) -> Floats:
    """Inches from the nearest held line at or before each running dimension; `held` rises and starts at 0.

    Empty for no dimensions; 0 before the first line.
    """
    at = np.array([line for line, _ in held])
    before = at[np.maximum(np.searchsorted(at, running + TOLERANCE, side="right") - 1, 0)]
    free: Floats = np.maximum(0.0, running - before)
    return free
