"""What an origin costs, as a sum of products: what a thing costs for each x, times how often it comes for each y.

A through cut, a rip, a corner or a pier costs by where the lines of units stand across, times how many courses of that
line it meets; so all pairs of x and y are one matrix product.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any

import numpy as np

from app.brickwork.lattice import Flags, Floats, Ints
from app.brickwork.phase_edges import Corners, Edging, Levels, Pairs, Uprights
from app.brickwork.phase_lines import Course, Lines
from app.panel.tolerance import TOLERANCE

SYMMETRY = 1 / 64
"""Inches: ends of a pier that differ by more are not alike; the finest division of a tape (our choice)."""


@dataclass(frozen=True, slots=True)
class Weights:
    """What one of each costs (our choice): a small piece counts as a cut and as small, a piece too thin to be a brick
    and left as joint is as bad, and ends that are not alike cost as much as two cuts a course."""

    cut: float = 1.0
    small: float = 10.0
    left_out: float = 11.0
    asymmetry: float = 2.0


@dataclass(frozen=True, slots=True)
class Rules:
    """Thinnest and least piece in inches, and the weights."""

    smallest_cut: float
    least_piece: float
    weights: Weights = Weights()


@dataclass(frozen=True, slots=True)
class Term:
    """One sum of products: `across` gives a row of numbers for each x, `up` one column of numbers for each y."""

    across: Callable[[Floats], Floats]
    up: Floats


def costs(edging: Edging, lines: Lines, rules: Rules, x: Floats, y: Floats) -> Floats:
    """The cost of each origin (x, y), shape (len(x), len(y)); y within one lattice step of 0, inches."""
    terms = [term for term in _terms(edging, lines, rules, y) if len(term.up)]
    total = np.zeros((len(x), len(y)))
    for start in range(0, len(x), 512):
        part = slice(start, start + 512)
        for term in terms:
            total[part] += term.across(x[part]).reshape(len(x[part]), -1) @ term.up
    return total


def _terms(edging: Edging, lines: Lines, rules: Rules, y: Floats) -> Iterator[Term]:
    yield _through_cuts(edging.uprights, lines, rules, y)
    yield _rips(edging.levels, lines, rules, y)
    corners = edging.corners
    yield from _outer_corners(_of(corners, corners.outer), lines, rules, y)
    yield _notches(_of(corners, ~corners.outer), lines, rules, y)
    for course in lines.courses:
        yield _unlike_ends(edging.pairs, course, lines, rules.weights.asymmetry, y)


def _of(corners: Corners, chosen: Flags) -> Corners:
    right, above, outer = (flags[chosen] for flags in (corners.right, corners.above, corners.outer))
    return Corners(corners.x[chosen], corners.y[chosen], right, above, outer)


def _through_cuts(uprights: Uprights, lines: Lines, rules: Rules, y: Floats) -> Term:
    """Units cut through by an upright edge that passes their whole height."""
    rows = _rows_between(uprights.y0, uprights.y1, lines.foot, lines.height, lines.step, y)
    (x, right), up = _gathered((uprights.x, uprights.right), rows, lines)

    def across(origins: Floats) -> Floats:
        left = _left_across(x, right, lines, origins)
        length = np.where(lines.lane_standing, lines.lane_height, left)
        return np.where(left > 0, _price(left, length, rules), 0.0)

    return Term(across, up)


def _rips(levels: Levels, lines: Lines, rules: Rules, y: Floats) -> Term:
    """Units that a level edge cuts from end to end."""
    left = _left_up(levels.y, levels.above, lines, y)
    standing, width = lines.standing[:, None], lines.width[:, None]
    price = _price(np.minimum(left, width), np.where(standing, left, width), rules)
    (x0, x1), up = _gathered((levels.x0, levels.x1), np.where(left > 0, price, 0.0), lines)

    def across(origins: Floats) -> Floats:
        start = lines.lane_start + origins[:, None, None]
        last = np.floor((x1[:, None] - lines.lane_width - start + TOLERANCE) / lines.across)
        first = np.ceil((x0[:, None] - start - TOLERANCE) / lines.across)
        count: Floats = np.maximum(last - first + 1, 0.0)
        return count

    return Term(across, up)


def _outer_corners(corners: Corners, lines: Lines, rules: Rules, y: Floats) -> Iterator[Term]:
    """Units of which a corner leaves a box: too thin one way or the other, or else cut, and small by its length."""
    left = _left_up(corners.y, corners.above, lines, y)
    standing, lane_standing = lines.standing[:, None], lines.lane_standing
    is_thick, left_out = (left > 0) & (left >= rules.smallest_cut - TOLERANCE), rules.weights.left_out
    fits = np.where(standing & (left > 0), _price(left, left, rules), is_thick * 1.0)
    (x, right), thick = _gathered((corners.x, corners.right), fits, lines)
    _, thin = _gathered((corners.x, corners.right), ((left > 0) & (standing | ~is_thick)) * 1.0, lines)

    def across_thick(origins: Floats) -> Floats:
        left = _left_across(x, right, lines, origins)
        is_brick = np.where((left > 0) & (left >= rules.smallest_cut - TOLERANCE), 1.0, 0.0)
        return np.where(lane_standing, is_brick, np.where(left > 0, _price(left, left, rules), 0.0))

    def across_thin(origins: Floats) -> Floats:
        left = _left_across(x, right, lines, origins)
        is_thin = (left > 0) & (~lane_standing | (left < rules.smallest_cut - TOLERANCE))
        return np.where(is_thin, left_out, 0.0)

    yield Term(across_thick, thick)
    yield Term(across_thin, thin)


def _notches(corners: Corners, lines: Lines, rules: Rules, y: Floats) -> Term:
    """Units out of which a corner of an opening bites a notch; their length is still the whole unit's."""
    length = np.where(lines.standing, lines.height, lines.width)
    price = _price(np.minimum(lines.width, lines.height), length, rules)[:, None]
    met = np.where(_left_up(corners.y, corners.above, lines, y) > 0, price, 0.0)
    (x, right), up = _gathered((corners.x, corners.right), met, lines)
    return Term(lambda origins: np.where(_left_across(x, right, lines, origins) > 0, 1.0, 0.0), up)


def _unlike_ends(pairs: Pairs, course: Course, lines: Lines, weight: float, y: Floats) -> Term:
    """Courses of a pier whose end pieces differ in length, and courses that end at an opening unlike on both sides."""
    foot, height = np.array([course.foot]), np.array([course.height])
    rows = _rows_between(pairs.y0, pairs.y1, foot, height, lines.step, y)[:, 0]
    distinct, which = np.unique(np.column_stack([pairs.x0, pairs.x1, pairs.pier]), axis=0, return_inverse=True)
    up = np.zeros((len(distinct), len(y)))
    np.add.at(up, which, rows)
    x0, x1, pier = distinct.T

    def across(origins: Floats) -> Floats:
        left = end_piece(x0, pier > 0, course, lines.across, origins)
        right = end_piece(x1, pier == 0, course, lines.across, origins)
        return np.where(np.abs(left - right) > SYMMETRY + TOLERANCE, weight, 0.0)

    return Term(across, up)


def end_piece(x: Floats, right: Flags, course: Course, across: float, origins: Floats) -> Floats:
    """Length of the piece that a course ends with at each edge, shape (origins, edges): what is left of the unit in
    which the edge stands, or the whole next unit where it stands in a joint."""
    start = course.start + origins[:, None, None]
    past_start, to_end = x[:, None] - start, start + course.width - x[:, None]
    cut_off = np.mod(np.where(right[:, None], past_start, to_end) + TOLERANCE, across) - TOLERANCE
    own, following = cut_off.argmin(axis=-1), cut_off.argmax(axis=-1)
    left = course.width[own] - cut_off.min(axis=-1)
    piece: Floats = np.where(left > TOLERANCE, left, course.width[following])
    return piece


def _price(least: Floats, length: Floats, rules: Rules) -> Floats:
    """What a piece costs whose smaller measure is `least` and which is `length` long, inches."""
    weights = rules.weights
    price = weights.cut + weights.small * (length < rules.least_piece - TOLERANCE)
    return np.where(least < rules.smallest_cut - TOLERANCE, weights.left_out, price)


def _left_across(x: Floats, right: Any, lines: Lines, origins: Floats) -> Floats:
    """How much of the unit that it cuts an edge leaves, shape (origins, edges, lanes); 0 where it cuts none."""
    from_start = np.mod(x[:, None] - lines.lane_start - origins[:, None, None], lines.across)
    cut = (from_start > TOLERANCE) & (from_start < lines.lane_width - TOLERANCE)
    return np.where(cut, np.where(right[:, None] > 0, lines.lane_width - from_start, from_start), 0.0)


def _left_up(y: Floats, above: Flags, lines: Lines, origins: Floats) -> Floats:
    """The same for level edges, shape (edges, lines, origins)."""
    height = lines.height[:, None]
    from_foot = np.mod(y[:, None, None] - lines.foot[:, None] - origins, lines.step)
    cut = (from_foot > TOLERANCE) & (from_foot < height - TOLERANCE)
    return np.where(cut, np.where(above[:, None, None], height - from_foot, from_foot), 0.0)


def _rows_between(low: Floats, high: Floats, foot: Floats, height: Floats, step: float, origins: Floats) -> Floats:
    """How many rows of each line stand wholly between two heights, shape (edges, lines, origins)."""
    foot, height = foot[:, None] + origins, height[:, None]
    last = np.floor((high[:, None, None] - height - foot + TOLERANCE) / step)
    first = np.ceil((low[:, None, None] - foot - TOLERANCE) / step)
    count: Floats = np.maximum(last - first + 1, 0.0)
    return count


def _gathered(keys: tuple[Floats | Flags, ...], up: Any, lines: Lines) -> tuple[list[Floats], Floats]:
    """Things that stand alike across taken together: their keys, and their numbers added up, a row a key and lane."""
    distinct, which = np.unique(np.column_stack(keys), axis=0, return_inverse=True)
    total = _added(_added(up, which, 0), lines.lane, 1) if len(up) else up
    return list(distinct.T), total.reshape(-1, up.shape[-1])


def _added(values: Floats, owner: Ints, axis: int) -> Floats:
    """The sums of the rows (axis 0) or columns (axis 1) of each owner 0, 1, 2 and on."""
    order = np.argsort(owner, kind="stable")
    first = np.searchsorted(owner[order], np.arange(owner.max() + 1))
    added: Floats = np.add.reduceat(np.take(values, order, axis=axis), first, axis=axis)
    return added
