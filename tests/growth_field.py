"""Where the liner has moved at any point of the face, worked out from the lines that hold it: checkpoints and plots are
held against it."""

import numpy as np

from app.brickwork.lattice import Flags, Floats
from app.brickwork.layout import Layout
from app.liner.growth import growth
from app.liner.lines import Hold, holds
from app.liner.tape import Tape, tapes
from app.panel.project import Liner
from app.panel.tolerance import TOLERANCE


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
