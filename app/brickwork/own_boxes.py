"""Where the whole unit of each piece stands, before anything is cut off it."""

import numpy as np

from app.brickwork.lattice import Floats, Ints, lattice
from app.brickwork.layout import Layout
from app.brickwork.turning import turned_points


def own_boxes(layout: Layout, zone: int, units: Ints) -> Floats:
    """Box (x0, y0, x1, y1) of the whole unit of each of `units`, all of one region, in that bond's own frame, inches.

    The bond's own frame is the face frame turned back by `bond.turn`. Shape (units, 4), none for no units.
    """
    region, laid = layout.regions[zone], layout.units
    origin = turned_points(np.array([region.origin]), -region.bond.turn)[0]
    lat = lattice(region.bond, region.size, (float(origin[0]), float(origin[1])), region.across, region.up)
    cell, i, j = laid.cell[units], laid.i[units], laid.j[units]
    x = lat.x[cell] + j * lat.up[0] + i * lat.across[0]
    y = lat.y[cell] + j * lat.up[1] + i * lat.across[1]
    if lat.is_stretched:
        x, y = lat.along.real(x), lat.upward.real(y)
    return np.column_stack([x, y, x + lat.width[cell], y + lat.height[cell]])
