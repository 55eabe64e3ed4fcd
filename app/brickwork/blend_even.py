"""Colours of equal shares in even steps over the bond: a start where chance leaves clusters that are too large."""

import numpy as np

from app.brickwork.clusters import Colours
from app.brickwork.lattice import Ints
from app.brickwork.layout import Layout


def even_colours(layout: Layout, wanted: Ints) -> Colours:
    """Each brick one colour on from the brick before it and two on from the one below; the colours with most bricks
    wanted are those that come most often. Empty for no units.

    Where courses step by a half or a third of a brick, the bricks that touch are one apart in a course and (0, 1),
    (-1, 1) or (1, 1) apart from course to course: 1, 2, 1 and 3 colours on, so that of four colours no two alike touch.
    """
    units = layout.units
    step = (units.i + 2 * units.j + units.cell) % len(wanted)
    to = np.empty(len(wanted), dtype=np.int8)
    to[np.argsort(np.bincount(step, minlength=len(wanted)), kind="stable")] = np.argsort(wanted, kind="stable")
    colours: Colours = to[step]
    return colours
