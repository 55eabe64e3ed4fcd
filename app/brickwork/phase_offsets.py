"""Every offset at which the cost of a bond's origin can change, and the middles between them."""

import numpy as np

from app.brickwork.lattice import Floats
from app.brickwork.phase_edges import Edging, Pairs
from app.brickwork.phase_lines import Course, Lines
from app.brickwork.phase_terms import SYMMETRY, Rules

_SAME = 1e-9
"""Inches: offsets closer than this are one; far under the tolerance, so that none is lost."""


def critical_x(edges: Edging, lines: Lines, rules: Rules) -> Floats:
    """Offsets across, inches, at which an edge meets the start or end of a unit, a limit, or a pier becomes alike."""
    x = np.unique(np.concatenate([edges.uprights.x, edges.levels.x0, edges.levels.x1]))
    lengths = _limits(lines.lane_width, rules)
    single = x[:, None, None] - lines.lane_start - lengths
    return np.concatenate([single.ravel(), *(_alike(edges.pairs, course, lines.across) for course in lines.courses)])


def critical_y(edges: Edging, lines: Lines, rules: Rules) -> Floats:
    """Offsets up, inches, at which an edge meets the foot or head of a unit, or a limit."""
    uprights, levels = edges.uprights, edges.levels
    y = np.unique(np.concatenate([uprights.y0, uprights.y1, levels.y, edges.pairs.y0, edges.pairs.y1]))
    offsets: Floats = y[:, None, None] - lines.foot - _limits(lines.height, rules)
    return offsets.ravel()


def candidates(offsets: Floats, period: float) -> Floats:
    """The offsets within one period, each once, and the middle between each and the next; sorted, inches."""
    own = np.sort(np.mod(offsets, period))
    own = own[np.append(True, np.diff(own) > _SAME)]
    following = np.append(own[1:], own[0] + period)
    return np.sort(np.mod(np.concatenate([own, (own + following) / 2]), period))


def _limits(full: Floats, rules: Rules) -> Floats:
    """Lengths from a unit's start at which what an edge leaves of it changes, shape (limits, units)."""
    lengths = np.array([[0.0], [rules.smallest_cut], [rules.least_piece]]) + np.zeros_like(full)
    return np.concatenate([lengths, full - lengths])


def _alike(pairs: Pairs, course: Course, across: float) -> Floats:
    """Offsets at which the end pieces of a pair differ by just the limit of symmetry: one of them cut, or both."""
    x0, x1, pier = np.unique(np.column_stack([pairs.x0, pairs.x1, pairs.pier]), axis=0).T[:, :, None, None]
    start, end, width = course.start, course.start + course.width, course.width
    limit = np.array([-SYMMETRY, SYMMETRY])[:, None, None, None]
    far, near = np.where(pier > 0, x0 - end, x0 - start), np.where(pier > 0, x1 - start, x1 - end)
    sign = np.where(pier > 0, 1.0, -1.0)
    whole = width[:, None] + limit
    left_cut, right_cut = far + sign * whole, near - sign * whole
    both = (far + near.swapaxes(-1, -2) + limit) / 2
    return np.concatenate([part.ravel() for part in (left_cut, right_cut, both, both + across / 2)])
