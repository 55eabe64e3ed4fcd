"""Where sheets butt because the flange of the one below was cut away, so that the seam is taped. See `seam_tape`."""

from functools import lru_cache

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from app.brickwork.bond import Bond
from app.brickwork.layout import Layout
from app.brickwork.regions import Region
from app.brickwork.turning import turned_points
from app.liner.cuts import Ring
from app.liner.laps import laps
from app.liner.laying_order import later_steps
from app.liner.mould import Mould, mould
from app.liner.offcut_places import steps_in_inches
from app.liner.offcut_values import CuttingPlan
from app.liner.places import starts
from app.liner.values import Sheet, SheetPlan
from app.liner.work_values import TapedSeam
from app.panel.size import BrickSize

_GRID = 1e-6
"""Inches on which edges of neighbouring sheets are brought together before they are compared."""

_NEAR = 1e-3
"""Inches; a seam this near to the mould's own far edge lies on it."""

_LEAST = 0.01
"""Inches; a seam shorter than this is a corner."""


def seam_tape(layout: Layout, plan: SheetPlan, cutting: CuttingPlan) -> tuple[TapedSeam, ...]:
    """Seams on which nothing can lap: the sheet below is cut from another place of its mould, where its far edge is
    not the mould's own, which alone has a flange. In the order of the laps; none for liner without laps.
    """
    regions = {region.mark: region for region in layout.regions}
    moved = {sheet.number: sheet for sheet in plan.sheets if cutting.taken(sheet.number).steps != (0, 0)}
    found = []
    for lap in laps(plan, moved):
        over = moved[lap.over]
        region = regions[over.region]
        shape = mould(region.bond, region.size, plan.columns, plan.rows)
        far = _far_edges(region.bond, region.size, plan.columns, plan.rows, starts(plan.corner))
        seam = _in_mould(lap.seam, over, region, shape, cutting.taken(lap.over).steps)
        length = float(seam.difference(far).length)
        if length > _LEAST:
            found.append(TapedSeam(lap.over, lap.by, length))
    return tuple(found)


def _in_mould(
    seam: tuple[Ring, ...], sheet: Sheet, region: Region, shape: Mould, steps: tuple[int, int]
) -> BaseGeometry:
    """The seam where it is cut in the unpacked sheet, joints as they were moulded."""

    def unturned(points: Ring) -> np.ndarray:
        nominal = [region.across.nominal(np.array(points)[:, 0]), region.up.nominal(np.array(points)[:, 1])]
        return turned_points(np.column_stack(nominal), -shape.turn)

    own = unturned(sheet.outline).min(axis=0) - shape.outline.min(axis=0)
    moved = np.array(steps_in_inches(shape, steps)) - own
    return shapely.MultiLineString([unturned(run) + moved for run in seam])


@lru_cache(maxsize=256)
def _far_edges(bond: Bond, size: BrickSize, columns: int, rows: int, away: tuple[int, int]) -> BaseGeometry:
    """A hair around the edges of a mould that have a flange: those on which sheets laid later lie."""
    shape = mould(bond, size, columns, rows)
    ring = shapely.LinearRing(shape.outline)
    moves = [np.array(steps_in_inches(shape, step)) for step in later_steps(bond, size, columns, rows, away)]
    later = [shapely.LinearRing(shape.outline + move) for move in moves]
    edges = [shapely.intersection(ring, other, grid_size=_GRID) for other in later]
    return shapely.buffer(shapely.union_all(edges), _NEAR)
