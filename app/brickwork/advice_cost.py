"""A quick estimate of what openings cost in cuts and small pieces, so that only the best ideas are really laid out.

Jambs by how many courses they cut, heads and sills by how many units they cut; corners, strips and zones do not count.
"""

from dataclasses import dataclass, replace
from math import floor

import numpy as np

from app.brickwork.lattice import Floats
from app.brickwork.layout import Layout
from app.brickwork.phase_lines import Lines, lines_of
from app.brickwork.phase_terms import Weights
from app.panel.tolerance import TOLERANCE

WEIGHTS = Weights(cut=1.0, small=10.0, left_out=10.0, asymmetry=0.0)
"""A small piece, or a sliver left as joint, is as bad as ten cuts (our choice)."""

LEFT, SILL, RIGHT, HEAD = range(4)
"""Columns of a box: where the brick field ends at each side of an opening."""


@dataclass(frozen=True, slots=True)
class Estimate:
    """Lines of the field's bond about its origin (inches, nominal), and what makes a piece small or no brick."""

    lines: Lines
    origin: tuple[float, float]
    least_piece: float
    smallest_cut: float
    weights: Weights

    @classmethod
    def of(cls, layout: Layout) -> "Estimate | None":
        """None for a bond that is turned or not level, and for an empty field."""
        if layout.field.is_empty:
            return None
        lines = lines_of(layout.bond, layout.size, layout.field.bounds[1], layout.field.bounds[3])
        if lines is None:
            return None
        x, y = layout.origin
        steps = floor(y / lines.up[1])
        weights = replace(WEIGHTS, small=0.0) if layout.panel.fit.closers else WEIGHTS
        origin = (x - steps * lines.up[0], y - steps * lines.up[1])
        return cls(lines, origin, layout.least_piece, layout.smallest_cut, weights)

    def targets(self, side: int, at: float) -> Floats:
        """How far a side at `at` inches must move for brick to start, or end, just there: up or right above 0.

        Heads and sills: the next course line each way. Jambs: every line within half a repeat, and the next each way.
        """
        lines, axis = self.lines, side % 2
        start, length = (lines.foot, lines.height) if axis else (lines.lane_start, lines.lane_width)
        period = lines.step if axis else lines.across
        ends = length if side in (LEFT, SILL) else np.zeros_like(length)
        ahead = np.mod(start + ends + self.origin[axis] - at, period)
        moves = np.unique(np.concatenate([ahead, ahead - period]).round(9))
        if axis and (np.abs(moves) <= TOLERANCE).any():
            return np.zeros(0)
        up, down = moves[moves > TOLERANCE], moves[moves < -TOLERANCE]
        near = np.abs(moves) <= (0.0 if axis else lines.across / 2)
        kept: Floats = np.unique(np.concatenate([down[-1:], moves[near & (np.abs(moves) > TOLERANCE)], up[:1]]))
        return kept

    def costs(self, boxes: Floats) -> Floats:
        """The cost of each box (left, sill, right, head; inches, nominal), its four sides taken together."""
        return self._jambs(boxes) + self._levels(boxes)

    def _jambs(self, boxes: Floats) -> Floats:
        lines, (x, y) = self.lines, self.origin
        width, height = lines.lane_width, lines.lane_height
        price = np.zeros((len(boxes), len(width)))
        for side in (LEFT, RIGHT):
            within = np.mod(boxes[:, side, None] - lines.lane_start - x, lines.across)
            left = within if side == LEFT else width - within
            is_cut = (within > TOLERANCE) & (within < width - TOLERANCE)
            price += is_cut * self._price(left, np.where(lines.lane_standing, height, left))
        foot = lines.foot + y
        last = np.floor((boxes[:, HEAD, None] - lines.height - foot + TOLERANCE) / lines.step)
        first = np.ceil((boxes[:, SILL, None] - foot - TOLERANCE) / lines.step)
        cost: Floats = (price[:, lines.lane] * np.maximum(last - first + 1, 0.0)).sum(axis=1)
        return cost

    def _levels(self, boxes: Floats) -> Floats:
        lines, y = self.lines, self.origin[1]
        price = np.zeros((len(boxes), len(lines.foot)))
        for side in (SILL, HEAD):
            within = np.mod(boxes[:, side, None] - lines.foot - y, lines.step)
            left = within if side == SILL else lines.height - within
            is_cut = (within > TOLERANCE) & (within < lines.height - TOLERANCE)
            price += is_cut * self._price(np.minimum(left, lines.width), np.where(lines.standing, left, lines.width))
        cost: Floats = price.sum(axis=1) * (boxes[:, RIGHT] - boxes[:, LEFT]) / lines.across
        return cost

    def _price(self, least: Floats, length: Floats) -> Floats:
        weights = self.weights
        price = weights.cut + weights.small * (length < self.least_piece - TOLERANCE)
        return np.where(least < self.smallest_cut - TOLERANCE, weights.left_out, price)
