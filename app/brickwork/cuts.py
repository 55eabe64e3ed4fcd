"""What a piece is: a trim of some cut class, small or not, or too thin to be a brick at all."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from app.brickwork.lattice import Flags, Floats, Grid
from app.brickwork.pieces import Pieces, areas, bounds
from app.panel.tolerance import TOLERANCE

CUTS = ("length", "height", "notch", "skew")
"""Square cut to length; rip along the length (also when shortened too); L or U; any slanted cut."""


@dataclass(frozen=True, slots=True)
class Sorting:
    """Trims with their measures along the unit's own axes, and what is left out, in the bond's own frame."""

    trims: Pieces
    cut: NDArray[np.int8]
    length: Floats
    height: Floats
    is_small: Flags
    area: float
    left_out: Pieces


def sort_pieces(grid: Grid, pieces: Pieces, standing: Flags, smallest_cut: float, least_piece: float) -> Sorting:
    """Sort the pieces of touched units.

    `standing` says of each cell of the motif whether its length runs up. A piece thinner than `smallest_cut` in either
    direction is left out; a trim shorter than `least_piece` is small. All inches.
    """
    x0, y0, x1, y1 = bounds(pieces)
    width, height = x1 - x0, y1 - y0
    kept = np.minimum(width, height) >= smallest_cut - TOLERANCE
    trims = pieces.take(kept)
    width, height = width[kept], height[kept]
    up = standing[grid.cell[trims.unit]]
    length, across = np.where(up, height, width), np.where(up, width, height)
    area = areas(trims)
    return Sorting(
        trims=trims,
        cut=_cut_classes(grid, trims, area, (width, height), up),
        length=length,
        height=across,
        area=float(area.sum()),
        is_small=length < least_piece - TOLERANCE,
        left_out=pieces.take(~kept),
    )


def _cut_classes(grid: Grid, trims: Pieces, area: Floats, box: tuple[Floats, Floats], up: Flags) -> NDArray[np.int8]:
    unit, (width, height) = trims.unit, box
    full_width = width >= (grid.x1 - grid.x0)[unit] - TOLERANCE
    full_height = height >= (grid.y1 - grid.y0)[unit] - TOLERANCE
    is_box = np.abs(area - width * height) <= TOLERANCE * (1 + width + height)
    is_square_cut = is_box & np.where(up, full_width, full_height)
    is_slanted = np.zeros(len(unit), dtype=np.bool_)
    is_slanted[~is_box] = ~_is_rectilinear(trims.take(~is_box))
    return np.where(
        is_square_cut,
        CUTS.index("length"),
        np.where(is_box, CUTS.index("height"), np.where(is_slanted, CUTS.index("skew"), CUTS.index("notch"))),
    ).astype(np.int8)


def _is_rectilinear(trims: Pieces) -> Flags:
    """Whether every edge of a piece runs along the unit's axes."""
    if not len(trims.unit):
        return np.zeros(0, dtype=np.bool_)
    first = trims.first
    following = np.arange(len(trims.points)) + 1
    following[first + trims.count - 1] = first
    step = np.abs(trims.points[following] - trims.points)
    return np.logical_and.reduceat(step.min(axis=1) <= TOLERANCE, first)
