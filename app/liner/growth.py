"""Growth of liner with temperature: free from the line that holds it before, along each axis on its own."""

from collections.abc import Sequence
from math import inf

import numpy as np

from app.brickwork.lattice import Flags, Floats
from app.brickwork.layout import Layout
from app.liner.lines import Hold, Line, holds
from app.liner.tape import Tape, tapes
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


def growth_at(layout: Layout, liner: Liner, temperature: float, x: Floats, y: Floats) -> tuple[Floats, Floats]:
    """How far the liner at points of the face has moved at one bed temperature if nothing is corrected: dx, dy.

    Inches in the face frame, right and up positive; the liner grows away from the nearest line before the point that
    holds it at that point, so a line that runs over a part of the face holds that part only. Points without liner get
    what liner there would do. Empty for no points, 0 everywhere for an empty brick field.
    """
    if layout.field.is_empty:
        return np.zeros(len(x)), np.zeros(len(y))
    each = growth(1.0, liner.expansion_per_degree, temperature - liner.reference_temperature)
    across, up = tapes(layout, layout.panel.laying.corner)
    return each * _moved(layout, across, liner, x, y), each * _moved(layout, up, liner, y, x)


def _moved(layout: Layout, tape: Tape, liner: Liner, along: Floats, beside: Floats) -> Floats:
    """Free length along the tape before each point, with the sign of its growth in the face frame."""
    running = tape.reach - along if tape.is_turned else along
    before = np.zeros(len(running))
    for hold in holds(layout, tape, liner):
        before = np.where(_is_held(hold, running, beside), np.maximum(before, hold.at), before)
    moved: Floats = np.maximum(0.0, running - before) * (-1.0 if tape.is_turned else 1.0)
    return moved


def _is_held(hold: Hold, running: Floats, beside: Floats) -> Flags:
    return (hold.at <= running + TOLERANCE) & (hold.low <= beside + TOLERANCE) & (beside - TOLERANCE <= hold.high)
