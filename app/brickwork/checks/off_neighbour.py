"""Courses or bond that do not run on from the wall: the panel's origin is not on the lattice of the wall's."""

from collections.abc import Iterator

import numpy as np

from app.brickwork.bond import Bond
from app.brickwork.findings import Finding
from app.brickwork.lattice import Floats
from app.brickwork.layout import Layout
from app.brickwork.turning import turned_points
from app.lengths import format_length
from app.panel.size import BrickSize

_NEAR = 1e-4
"""Inches: far under 1/64 in., far over the round-off of a 1,000 ft wall."""


def check(layout: Layout, unit: str) -> Iterator[Finding]:
    """One finding a panel, at the lower left of its brick: a note for one that is released from its wall, a warning for
    any other. Nothing where there is no wall or no brick. Lengths in words in `unit`."""
    wall = layout.place.wall
    if wall is None or layout.field.is_empty:
        return
    across, up = off_lattice(layout.bond, layout.size, (layout.origin[0] - wall[0], layout.origin[1] - wall[1]))
    if abs(across) <= _NEAR and abs(up) <= _NEAR:
        return
    x, y = layout.field.bounds[:2]
    severity, way = ("note", "take it back into the wall") if layout.panel.released else ("warning", _OWN_ORIGIN)
    text = (
        f"Courses stand {_said(up, 'above', 'below', unit)} the wall's and head joints"
        f" {_said(across, 'right of', 'left of', unit)} them; {way} to let them run on."
    )
    yield Finding("off-neighbour", severity, float(x), float(y), text, "wall")


_OWN_ORIGIN = "take away the field's own origin"


def _said(by: float, more: str, less: str, unit: str) -> str:
    return f"{format_length(abs(by), unit, 64)} {more if by >= 0 else less}"


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
