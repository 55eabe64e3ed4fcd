"""The pockets of a sheet as it comes from its pack, measured from its starting corner.

A sheet's own frame for the knife: 0, 0 is the starting corner of its bounding box, x runs along it and y up from it,
both away from the corner, whichever corner of the panel laying starts from. Joints are nominal.
"""

from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from app.brickwork.bond import Bond
from app.brickwork.lattice import Floats, lattice
from app.brickwork.turning import turned_points
from app.liner.mould import mould
from app.panel.size import BrickSize
from app.panel.tolerance import TOLERANCE


@dataclass(frozen=True, slots=True, eq=False)
class Pockets:
    """Corners of each pocket, shape (pockets, 4, 2), anticlockwise, the side from each corner to the next, and the
    sheet's outline, in its own frame.

    `columns` are the far and near edges of the pockets that one counts along the sheet's first course, `rows` those of
    its courses, shape (n, 2), near before far, rising; neither where pockets do not lie along the face. `ridge` is the
    widest joint.
    """

    corners: Floats
    sides: Floats
    outline: Floats
    columns: Floats
    rows: Floats
    ridge: float


@lru_cache(maxsize=256)
def pockets(bond: Bond, size: BrickSize, columns: int, rows: int, away: tuple[int, int]) -> Pockets:
    """The pockets of the sheet of these columns and rows, for sheets that follow on `away`: 1 right or up, -1 not."""
    shape, lat = mould(bond, size, columns, rows), lattice(bond, size, (0.0, 0.0))
    low = (shape.shifts(lat)[:, None, :] + np.column_stack([lat.x, lat.y])).reshape(-1, 2)
    faces = np.tile(np.column_stack([lat.width, lat.height]), (len(low) // len(lat.x), 1))
    square = np.array([(0, 0), (1, 0), (1, 1), (0, 1)])
    corners = turned_points((low[:, None] + faces[:, None] * square).reshape(-1, 2), bond.turn)
    outline = turned_points(shape.outline, shape.turn) * away
    start = outline.min(axis=0)
    own = (corners * away - start).reshape(-1, 4, 2)
    own = own if away[0] * away[1] > 0 else own[:, ::-1]
    is_aligned = abs(bond.turn % 90) <= TOLERANCE
    along, up = _counted(own) if is_aligned else (np.zeros((0, 2)), np.zeros((0, 2)))
    return Pockets(own, np.roll(own, -1, axis=1) - own, outline - start, along, up, _widest_joint(bond, size))


def _counted(corners: Floats) -> tuple[Floats, Floats]:
    """Near and far edges of what one counts: pockets along the first course, and courses.

    Courses that overlap (basket weave) are counted as the pockets over the one in the starting corner.
    """
    low, high = corners.min(axis=1).round(6), corners.max(axis=1).round(6)
    first = np.lexsort((low[:, 0], low[:, 1]))[0]
    middle = (low[first] + high[first]) / 2
    level, upright = ((low[:, axis] < middle[axis]) & (high[:, axis] > middle[axis]) for axis in (1, 0))
    courses = np.unique(np.column_stack([low[:, 1], high[:, 1]]), axis=0)
    if (courses[1:, 0] < courses[:-1, 1]).any():
        courses = np.unique(np.column_stack([low[upright, 1], high[upright, 1]]), axis=0)
    return np.unique(np.column_stack([low[level, 0], high[level, 0]]), axis=0), courses


def _widest_joint(bond: Bond, size: BrickSize) -> float:
    faces = [(cell, cell.face(size)) for cell in bond.cells]
    return max(
        max(cell.width.inches(size) - width, cell.height.inches(size) - height) for cell, (width, height) in faces
    )
