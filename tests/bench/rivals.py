"""Other ways to lay out a face, each with a public library, each giving every piece with its box and state."""

from collections.abc import Callable

import numpy as np
import pyclipper
import shapely
from loop import loop as plain_loop

from app.brickwork.lattice import Grid, grid, lattice
from app.brickwork.layout import Layout, lay_out
from app.brickwork.pieces import areas
from app.brickwork.turning import turned, turned_points
from app.panel.geometry import brick_field
from app.panel.values import Panel

SCALE = 2**20
"""Clipper works in integers: about a millionth of an inch."""

Piece = tuple[float, float, float, float, float, bool]
"""Box x0, y0, x1, y1, area, is whole; in the bond's own frame."""


def engine(panel: Panel) -> Callable[[], Layout]:
    """This project's own."""
    return lambda: lay_out(panel)


def loop(panel: Panel) -> Callable[[], list[float]]:
    """A shapely intersection for every unit, one after another: the loop that the tests hold the engine to."""
    return lambda: [piece.outline.area for piece in plain_loop(panel) if piece.state != "left out"]


def clipper(panel: Panel) -> Callable[[], list[float]]:
    """All units against the field in one call of the Clipper library, its paths then read back as pieces.

    Where the units stand is given to it: only cutting and reading are timed.
    """
    units, field = _units_and_field(panel)
    rings = [_scaled_ring(ring) for ring in shapely.get_rings(shapely.get_parts(field))]
    whole = {round(area * 1e4) for area in (units.lat.width * units.lat.height).tolist()}
    boxes = np.column_stack([units.x0, units.y0, units.x1, units.y1])

    def run() -> list[float]:
        job = pyclipper.Pyclipper()
        job.AddPaths([_box(box) for box in (boxes * SCALE).tolist()], pyclipper.PT_SUBJECT, True)
        job.AddPaths(rings, pyclipper.PT_CLIP, True)
        paths = job.Execute(pyclipper.CT_INTERSECTION, pyclipper.PFT_NONZERO, pyclipper.PFT_EVENODD)
        return [piece[4] for piece in (_piece(path, whole) for path in paths) if piece is not None]

    return run


def _units_and_field(panel: Panel) -> tuple[Grid, shapely.Geometry]:
    region = lay_out(panel).regions[0]
    bond = region.bond
    origin = turned_points(np.array([region.origin]), -bond.turn)[0]
    field = turned(brick_field(panel, region.size.head_joint.inches), -bond.turn)
    return grid(lattice(bond, region.size, (origin[0], origin[1])), field.bounds), field


def _scaled_ring(ring: shapely.LinearRing) -> list[list[int]]:
    scaled: list[list[int]] = np.rint(shapely.get_coordinates(ring)[:-1] * SCALE).astype(int).tolist()
    return scaled


def _box(box: list[float]) -> list[tuple[int, int]]:
    x0, y0, x1, y1 = (round(side) for side in box)
    return [(x0, y0), (x1, y0), (x1, y1), (x0, y1)]


def _piece(path: list[list[int]], whole: set[int]) -> Piece | None:
    """A path as a piece; None for one too thin to be a brick."""
    xs, ys = [x for x, _ in path], [y for _, y in path]
    x0, y0, x1, y1 = min(xs) / SCALE, min(ys) / SCALE, max(xs) / SCALE, max(ys) / SCALE
    if min(x1 - x0, y1 - y0) < 0.25 - 2 / SCALE:
        return None
    area = abs(pyclipper.Area(path)) / SCALE**2
    return x0, y0, x1, y1, area, round(area * 1e4) in whole


def piece_areas(layout: Layout) -> list[float]:
    """Areas of all pieces of a layout, as the rivals give them."""
    whole = ~layout.units.is_trimmed
    lattices = [lattice(region.bond, region.size, region.origin) for region in layout.regions]
    found = [
        float(lattices[zone].width[cell] * lattices[zone].height[cell])
        for zone, cell in zip(layout.units.zone[whole].tolist(), layout.units.cell[whole].tolist(), strict=True)
    ]
    return found + areas(layout.trims.pieces).tolist()
