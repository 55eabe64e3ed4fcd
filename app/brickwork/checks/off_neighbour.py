"""Courses or bond that do not run on from the wall: the panel's origin is not on the lattice of the wall's, or joints
give in one of them where they do not in the other."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import ceil, floor

import numpy as np

from app.brickwork.bond import Bond
from app.brickwork.checks.left_out import LEAST_READ
from app.brickwork.findings import Finding
from app.brickwork.fit_grids import course_grid
from app.brickwork.fit_lines import Grid1
from app.brickwork.lattice import Floats
from app.brickwork.layout import Layout
from app.brickwork.stretch import IDENTITY
from app.brickwork.turning import turned_points
from app.lengths import format_length
from app.panel.size import BrickSize
from app.panel.tolerance import TOLERANCE

_NEAR = 1e-4
"""Inches: far under 1/64 in., far over the round-off of a 1,000 ft wall."""


@dataclass(frozen=True, slots=True)
class _Off:
    """The course that stands farthest from the wall's, and by how much up; whether all others do as well; inches."""

    course: int
    by: float
    at: float
    is_all: bool


def check(layout: Layout, unit: str) -> Iterator[Finding]:
    """One finding a panel, at the lower left of its brick or at the course that is farthest off: a note for one that is
    released from its wall, a warning for any other. Nothing where there is no wall or no brick. Lengths in `unit`."""
    wall = layout.place.wall
    if wall is None or layout.field.is_empty:
        return
    across, up = off_lattice(layout.bond, layout.size, (layout.origin[0] - wall[0], layout.origin[1] - wall[1]))
    off = _farthest(layout, up)
    if abs(across) <= _NEAR and abs(off.by) <= _NEAR:
        return
    severity = "note" if layout.panel.released else "warning"
    text = f"{_sentence(across, off, unit)}; {_way(layout)} to let them run on."
    yield Finding("off-neighbour", severity, float(layout.field.bounds[0]), off.at, text, "wall")


def _farthest(layout: Layout, up: float) -> _Off:
    """Of the courses over the panel's height, where bed joints have given in the panel and in its wall."""
    grid = course_grid(layout.bond, layout.size, layout.origin)
    start, step = (grid.origin, grid.step) if isinstance(grid, Grid1) else (layout.origin[1], layout.size.gauge)
    lines, wall = layout.lines.up, layout.place.wall_courses or IDENTITY
    low, high = float(layout.field.bounds[1]), float(layout.field.bounds[3])
    first = ceil((lines.nominal(low) - start - TOLERANCE) / step)
    last = floor((lines.nominal(high) - start) / step)
    if last < first:
        return _Off(first, up, low, True)
    nominal: Floats = start + step * np.arange(first, last + 1, dtype=np.float64)
    real: Floats = lines.real(nominal)
    off: Floats = real - wall.real(nominal - up)
    worst = int(np.abs(off).round(6).argmax())
    is_all = bool(np.ptp(off) <= _NEAR)
    return _Off(first + worst, float(off[worst]), low if is_all else float(real[worst]), is_all)


def _sentence(across: float, off: _Off, unit: str) -> str:
    """How courses stand, and head joints; without the part that is nothing."""
    up, along = _said(off.by, "above", "below", unit), _said(across, "right of", "left of", unit)
    if abs(off.by) <= _NEAR:
        return f"Head joints stand {along} the wall's"
    is_off_along = abs(across) > _NEAR
    if off.is_all:
        return f"Courses stand {up} the wall's" + f" and head joints {along} them" * is_off_along
    words = f"Course {off.course} stands {up} the wall's, the farthest of all courses"
    return words + f"; head joints stand {along} the wall's" * is_off_along


def _way(layout: Layout) -> str:
    if layout.panel.released:
        return "take it back into the wall"
    if layout.panel.field.origin is not None:
        return "take away the field's own origin"
    return "take a bond of plain courses, or do not ask the wall's bed joints to give,"


def _said(by: float, more: str, less: str, unit: str) -> str:
    least, words = LEAST_READ[unit]
    inches = f"less than {words}" if abs(by) < least else format_length(abs(by), unit, 64)
    return f"{inches} {more if by >= 0 else less}"


def off_lattice(bond: Bond, size: BrickSize, shift: tuple[float, float]) -> tuple[float, float]:
    """The least move across and up, inches, between a bond and itself shifted: nothing for a sum of lattice vectors.

    In level bonds courses are matched first, then head joints; a turned bond takes the shortest move.
    """
    vectors = np.array([[part.inches(size) for part in vector] for vector in (bond.across, bond.up)])
    here: Floats = turned_points(np.array([shift]), -bond.turn)[0]
    whole = np.round(np.linalg.solve(vectors.T, here))
    steps = np.array([(i, j) for i in range(-2, 3) for j in range(-2, 3)])
    moves = here - (whole + steps) @ vectors
    is_level = bond.turn == 0 and abs(vectors[0, 1]) <= _NEAR
    keys = np.abs(moves).round(6) if is_level else np.hypot(*moves.T).round(6)[:, None]
    best = int(np.lexsort(keys.T)[0])
    across, up = turned_points(moves[best : best + 1], bond.turn)[0].tolist()
    return across, up
