"""Phase: the origin of a bond with the fewest small pieces, cuts and unlike ends, where nothing pins it.

Exact: what an origin costs changes only where an edge of the field meets the start or end of a unit, or leaves a piece
just as long as a limit, so the best of these critical offsets and of the middles between them is the best of all.
"""

from dataclasses import dataclass, replace
from math import floor

import numpy as np
from shapely.geometry.base import BaseGeometry

from app.brickwork.bond import Bond
from app.brickwork.lattice import Floats
from app.brickwork.phase_edges import Edging, edging
from app.brickwork.phase_lines import Lines, lines_of
from app.brickwork.phase_offsets import candidates, critical_x, critical_y
from app.brickwork.phase_terms import Rules, Weights, costs
from app.panel.size import BrickSize
from app.panel.values import Panel

Origin = tuple[float, float]

_EQUAL = 1e-6
"""Costs closer than this are equal: they are sums of whole weights."""


@dataclass(frozen=True, slots=True)
class Phase:
    """An origin in inches, face frame, its cost, and what that counts: small pieces, cut pieces (small ones too),
    pieces too thin to be a brick and left as joint, and courses with unlike ends at piers and openings.

    `before` is the cost at the present origin.
    """

    origin: Origin
    cost: float
    small: int
    cut: int
    left_out: int
    asymmetry: int
    before: float


def best_phase(
    panel: Panel,
    size: BrickSize,
    bond: Bond,
    field: BaseGeometry,
    smallest_cut: float,
    least_piece: float,
    fixed_y: float | None = None,
) -> Phase | None:
    """The origin of lowest cost for the bond laid over `field`, all inches; of equals one nearest to the present.

    With `fixed_y` the courses stay where they are and only x is free. Slanted edges do not count, and a unit that two
    edges cut counts at each. None for a bond that is turned or not level, and for an empty field.
    """
    searched = _searched(size, bond, field, smallest_cut, least_piece)
    if searched is None:
        return None
    edges, lines, rules = searched
    present = _present(panel, field, fixed_y)
    x0, y0 = _reduced(present, lines)
    x = candidates(np.append(critical_x(edges, lines, rules), x0), lines.across)
    y = np.array([y0])
    if fixed_y is None:
        y = candidates(np.append(critical_y(edges, lines, rules), y0), lines.up[1])
    cost = costs(edges, lines, rules, x, y)
    column, row = np.nonzero(cost <= cost.min() + _EQUAL)
    moved = _least_move(x[column] - x0, y[row] - y0, lines)
    best = _counted((present[0] + moved[0], present[1] + moved[1]), edges, lines, rules)
    return replace(best, before=float(costs(edges, lines, rules, np.array([x0]), np.array([y0]))[0, 0]))


def phase_cost(
    size: BrickSize, bond: Bond, field: BaseGeometry, smallest_cut: float, least_piece: float, origin: Origin
) -> Phase | None:
    """What one origin costs, inches; None for a bond that is turned or not level, and for an empty field."""
    searched = _searched(size, bond, field, smallest_cut, least_piece)
    return None if searched is None else _counted(origin, *searched)


def _searched(
    size: BrickSize, bond: Bond, field: BaseGeometry, smallest_cut: float, least_piece: float
) -> tuple[Edging, Lines, Rules] | None:
    if field.is_empty:
        return None
    lines = lines_of(bond, size, field.bounds[1], field.bounds[3])
    return None if lines is None else (edging(field), lines, Rules(smallest_cut, least_piece))


def _present(panel: Panel, field: BaseGeometry, fixed_y: float | None) -> Origin:
    """The origin typed, else the field's lower-left corner, with the courses' own height where that is fixed."""
    typed = panel.field.origin
    x, y = (typed[0].inches, typed[1].inches) if typed is not None else field.bounds[:2]
    return float(x), float(y) if fixed_y is None else fixed_y


def _reduced(origin: Origin, lines: Lines) -> Origin:
    """The same origin by whole lattice steps up, its y within one step of 0."""
    steps = floor(origin[1] / lines.up[1])
    return origin[0] - steps * lines.up[0], origin[1] - steps * lines.up[1]


def _least_move(dx: Floats, dy: Floats, lines: Lines) -> Origin:
    """The shortest of the moves, each taken by the lattice vectors that make it shortest."""
    step = -np.round(dy / lines.up[1])
    dx, dy = dx + step * lines.up[0], dy + step * lines.up[1]
    dx = dx - np.round(dx / lines.across) * lines.across
    nearest = int(np.hypot(dx, dy).argmin())
    return float(dx[nearest]), float(dy[nearest])


def _counted(origin: Origin, edges: Edging, lines: Lines, rules: Rules) -> Phase:
    x, y = (np.array([part]) for part in _reduced(origin, lines))

    def count(cut: float = 0, small: float = 0, left_out: float = 0, asymmetry: float = 0) -> int:
        weights = Weights(cut, small, left_out, asymmetry)
        return round(float(costs(edges, lines, replace(rules, weights=weights), x, y)[0, 0]))

    cut, small, left_out, unlike = count(cut=1), count(small=1), count(left_out=1), count(asymmetry=1)
    by = rules.weights
    cost = by.cut * cut + by.small * small + by.left_out * left_out + by.asymmetry * unlike
    return Phase(origin, cost, small, cut, left_out, unlike, before=cost)
