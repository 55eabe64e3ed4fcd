"""The pieces of a face that are cut from flat bricks, one by one, along their own axes."""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
import shapely

from app.brickwork.bond import STANDING
from app.brickwork.clusters import Colours
from app.brickwork.cuts import CUTS
from app.brickwork.lattice import Flags, Floats, Ints
from app.brickwork.layout import Layout
from app.brickwork.own_boxes import own_boxes
from app.brickwork.pieces import Pieces, bounds
from app.brickwork.regions import Region
from app.brickwork.returns import corner_units, size_of
from app.brickwork.turning import turned_points
from app.order.saw_values import Point
from app.order.work import FaceWork
from app.panel.tolerance import TOLERANCE

ON_EDGE = 1e-4
"""Inches: an end this near to the edge of its brickwork lies on it; far above round-off, far below a joint."""


@dataclass(frozen=True, slots=True)
class FlatPiece:
    """One piece as it is on the face, inches along the unit's axes, `outline` from the whole unit's lower-left corner.

    `kind` and `whole` are those of the brick it is cut from; `has_factory_end` only where it is cut to length alone;
    `outline` only of notches and skew cuts; `zone` is "" in the field; `colour` counts in the blend.
    """

    size: str
    kind: str
    whole: tuple[float, float]
    cut: str
    length: float
    height: float
    has_factory_end: bool
    outline: tuple[Point, ...]
    zone: str
    course: int
    colour: int


def flat_pieces(face: FaceWork) -> Iterator[FlatPiece]:
    """Trims in the order of the layout, region after region, then the cut pieces of the return faces.

    Corner units are left out: they are no flat bricks. Nothing for a face without trims.
    """
    layout, trims = face.layout, face.layout.trims
    is_flat = ~np.isin(trims.unit, corner_units(face.around))
    zone_of = layout.units.zone[trims.unit]
    for zone in range(len(layout.regions)):
        chosen = np.flatnonzero(is_flat & (zone_of == zone))
        if len(chosen):
            yield from _of_region(layout, zone, chosen, face.colours)
    yield from _behind_corners(face)


def _of_region(layout: Layout, zone: int, chosen: Ints, colours: Colours) -> Iterator[FlatPiece]:
    region, units, trims = layout.regions[zone], layout.units, layout.trims
    bond, turn, mark = region.bond, region.bond.turn, _mark(region)
    kept = np.zeros(len(trims), dtype=np.bool_)
    kept[chosen] = True
    taken = trims.pieces.take(kept)
    local = Pieces(taken.unit, taken.count, turned_points(taken.points, -turn))
    unit = trims.unit[chosen]
    standing = np.array([cell.kind in STANDING for cell in bond.cells])[units.cell[unit]]
    factory = _has_neighbour(region.extent, local, standing, turn)
    boxes, first = own_boxes(layout, zone, unit), local.first
    for row, (trim, cell) in enumerate(zip(chosen.tolist(), units.cell[unit].tolist(), strict=True)):
        ring = local.points[first[row] : first[row] + local.count[row]]
        length, height, cut = float(trims.length[trim]), float(trims.height[trim]), CUTS[int(trims.cut[trim])]
        kind, whole = bond.cells[cell].kind, _along(bond.cells[cell].face(region.size), bool(standing[row]))
        if cut == "length" and length > whole[0] + TOLERANCE:
            # A closer of a header and the piece beside it: longer than a header, so cut from a stretcher.
            kind, whole = "stretcher", (region.size.length.inches, region.size.height.inches)
        outline = _lying(ring, boxes[row], bool(standing[row])) if cut in ("notch", "skew") else ()
        course, colour = int(units.course[unit[row]]), int(colours[unit[row]])
        has_end = cut == "length" and bool(factory[row])
        yield FlatPiece(region.size.name, kind, whole, cut, length, height, has_end, outline, mark, course, colour)


def _along(face: tuple[float, float], is_standing: bool) -> tuple[float, float]:
    return (face[1], face[0]) if is_standing else face


def _has_neighbour(extent: shapely.Geometry, local: Pieces, standing: Flags, turn: float) -> Flags:
    """Whether a brick of the same brickwork stands beside one end at least: that end must be a factory end.

    An end that was cut lies on the edge of the brickwork's extent: at a panel's edge, a jamb, or the joint before
    another zone. A piece with both ends there, as between two openings, is cut at both.
    """
    x0, y0, x1, y1 = bounds(local)
    middle_x, middle_y = (x0 + x1) / 2, (y0 + y1) / 2
    starts = np.column_stack([np.where(standing, middle_x, x0), np.where(standing, y0, middle_y)])
    ends = np.column_stack([np.where(standing, middle_x, x1), np.where(standing, y1, middle_y)])
    edge = extent.boundary
    shapely.prepare(edge)
    on_edge = [shapely.dwithin(edge, shapely.points(turned_points(points, turn)), ON_EDGE) for points in (starts, ends)]
    beside: Flags = ~(on_edge[0] & on_edge[1])
    return beside


def _lying(ring: Floats, box: Floats, is_standing: bool) -> tuple[Point, ...]:
    """An outline from its whole unit's lower-left corner; a standing unit laid down clockwise, its length across."""
    x, y = (ring - box[:2]).T
    along, across = (y, box[2] - box[0] - x) if is_standing else (x, y)
    return tuple(zip(along.tolist(), across.tolist(), strict=True))


def _behind_corners(face: FaceWork) -> Iterator[FlatPiece]:
    """Cut pieces of the return faces: one end stands toward the corner unit, the other at the depth."""
    layout, pieces = face.layout, [piece for one in face.around for piece in one.pieces]
    for piece, colour in zip(pieces, face.return_colours.tolist(), strict=True):
        if not piece.is_trimmed:
            continue
        size, zone = size_of(layout, piece.unit), int(layout.units.zone[piece.unit])
        whole = size.length.inches, size.height.inches
        is_ripped = piece.height < whole[1] - TOLERANCE
        mark, course = _mark(layout.regions[zone]), int(layout.units.course[piece.unit])
        cut = "height" if is_ripped else "length"
        measures = piece.length, piece.height
        yield FlatPiece(size.name, "stretcher", whole, cut, *measures, not is_ripped, (), mark, course, colour)


def _mark(region: Region) -> str:
    return "" if region.mark == "field" else region.mark
