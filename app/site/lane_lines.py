"""Joint lines on which a lane's edges lie, and where lanes must be so that all is in reach, in one direction."""

from dataclasses import dataclass
from math import ceil, floor

import numpy as np
from numpy.typing import NDArray

from app.brickwork.layout import Layout
from app.panel.tolerance import TOLERANCE

Floats = NDArray[np.float64]
Span = tuple[float, float]

HALVINGS = 10
"""How often the search for the least reach with as many lanes halves: to a thousandth of the reach."""


@dataclass(frozen=True, slots=True, eq=False)
class JointLines:
    """Middles of joints in rising order, inches, from before the panel to past its `extent`; a lane takes `modules`."""

    at: Floats
    modules: int
    extent: float

    def lane(self, first: int) -> Span:
        """From one line to the line a lane's width on, as far as the panel goes."""
        low, high = self.at[first], self.at[first + self.modules]
        return float(max(low, 0.0)), float(min(high, self.extent))


def joint_lines(layout: Layout, axis: int, width: float) -> JointLines:
    """Lines of the field's bond across one axis, 0 for x and 1 for y, and how many modules make up `width` inches.

    Where all cells of the bond are alike in size that size is the module (a soldier's width), else the head module and
    the gauge. In bonds whose joints do not run through a line is a joint in some courses only.
    """
    step, joint = _module(layout, axis)
    extent = (layout.panel.width, layout.panel.height)[axis]
    stretch, origin = (layout.lines.across, layout.lines.up)[axis], layout.origin[axis]
    modules = max(1, ceil(width / step - TOLERANCE))
    before = floor(-origin / step) - modules - 1
    after = ceil((extent - origin) / step) + modules + 2
    nominal: Floats = np.arange(before, after, dtype=np.float64) * step + origin
    return JointLines(stretch.real(nominal) - joint / 2, modules, extent)


def _module(layout: Layout, axis: int) -> Span:
    """Module and joint, inches."""
    size = layout.size
    faces = [(cell, cell.face(size)) for cell in layout.bond.cells]
    cells = [((cell.width, cell.height)[axis].inches(size), face[axis]) for cell, face in faces]
    steps = {round(step, 9) for step, _ in cells}
    if len(steps) == 1:
        return cells[0][0], cells[0][0] - cells[0][1]
    return (size.head_module, size.head_joint.inches) if axis == 0 else (size.gauge, size.bed_joint)


def fewest(lines: JointLines, middles: Floats, outside: Floats, reach: float) -> list[Span]:
    """The fewest lanes, from low to high, such that each middle is within `reach` of one or of the form's edge.

    `middles` are across the lanes, `outside` the distances to the edge, inches. Of as few lanes those with the least
    reach are taken, to a thousandth, so that strips between them come out alike.
    """
    order = np.argsort(middles, kind="stable")
    middles, outside = middles[order], outside[order]
    best = _lanes(lines, middles[outside > reach + TOLERANCE], reach)
    low, high = 0.0, reach
    for _ in range(HALVINGS if best else 0):
        tried = (low + high) / 2
        lanes = _lanes(lines, middles[outside > tried + TOLERANCE], tried)
        if len(lanes) <= len(best):
            best, high = lanes, tried
        else:
            low = tried
    return best


def _lanes(lines: JointLines, middles: Floats, reach: float) -> list[Span]:
    """From the lowest piece on, each lane as far on as its first piece allows: no cover has fewer."""
    found: list[Span] = []
    free, k = 0, 0
    last = int(np.searchsorted(lines.at, lines.extent + TOLERANCE, "right")) - 1 - lines.modules
    while k < len(middles):
        first = _first(lines, float(middles[k]), reach, last)
        first = max(first, free)
        free = first + lines.modules
        found.append(lines.lane(first))
        k = max(k + 1, int(np.searchsorted(middles, lines.at[free] + reach + TOLERANCE, "right")))
    return found


def _first(lines: JointLines, piece: float, reach: float, last: int) -> int:
    """The line at which a lane for this piece starts: no farther than `last` unless the piece needs it."""
    farthest = int(np.searchsorted(lines.at, piece + reach + TOLERANCE, "right")) - 1
    nearest = int(np.searchsorted(lines.at, piece - reach - TOLERANCE, "left")) - lines.modules
    return max(min(farthest, last), nearest)


def gaps(spans: list[Span], low: Floats, high: Floats) -> Floats:
    """How far each stretch from low to high is from the nearest span, inches; infinite for no spans."""
    nearest = np.full(len(low), np.inf)
    for start, end in spans:
        nearest = np.minimum(nearest, np.maximum(0.0, np.maximum(start - high, low - end)))
    return nearest
