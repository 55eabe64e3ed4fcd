"""What holds of every layout, whatever the panel: checked by shapely alone, from the outlines of the pieces."""

from dataclasses import dataclass

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from app.brickwork.layout import Layout, whole_outlines
from app.brickwork.pieces import Pieces
from app.brickwork.regions import Region

NEAR = 1e-6


def _polygons(pieces: Pieces) -> np.ndarray:
    rings = shapely.linearrings(pieces.points, indices=np.repeat(np.arange(len(pieces.unit)), pieces.count))
    return shapely.polygons(rings)


@dataclass(frozen=True)
class Drawn:
    """A layout as polygons: bricks in the order of its units, what was left out, and the joints between them."""

    layout: Layout
    bricks: np.ndarray
    left: np.ndarray
    joints: BaseGeometry


def drawn(layout: Layout) -> Drawn:
    """Joints are what shapely finds of the field when every piece is taken away; nothing of the engine's sums."""
    bricks, left = brick_outlines(layout), _polygons(layout.left_out)
    joints = layout.field.difference(shapely.multipolygons(np.concatenate([bricks, left])))
    return Drawn(layout, bricks, left, joints)


def assert_laws(layout: Layout) -> None:
    """No piece overlaps another or leaves the field, and bricks, joints and left out make up the field."""
    face = drawn(layout)
    assert_no_overlap(face)
    assert_inside(face)
    assert_areas(face)


def assert_no_overlap(face: Drawn) -> None:
    pieces = np.concatenate([face.bricks, face.left])
    tree = shapely.STRtree(pieces)
    one, two = tree.query(pieces, predicate="intersects")
    one, two = one[one < two], two[one < two]
    shared = shapely.area(shapely.intersection(pieces[one], pieces[two]))
    assert shared.max(initial=0) < NEAR, "pieces overlap"


def assert_inside(face: Drawn) -> None:
    field = face.layout.field
    shapely.prepare(field)
    doubtful = face.bricks[~shapely.covers(field, face.bricks)]
    outside = shapely.area(shapely.difference(doubtful, field))
    assert outside.max(initial=0) < NEAR, "a piece leaves the field"


def assert_areas(face: Drawn) -> None:
    field, said = face.layout.field.area, face.layout.area
    assert abs(shapely.area(face.bricks).sum() - said.brick) <= NEAR * (1 + field), "other area of brick"
    assert abs(shapely.area(face.left).sum() - said.left_out) <= NEAR * (1 + field), "other area left out"
    rest = field - said.brick - face.joints.area - said.left_out
    assert abs(rest) <= 1e-6 * field + NEAR, "bricks, joints and left out do not make up the field"


_REACH = 0.6
"""Of a joint: nothing in a joint is further from brick or the field's edge than half a joint; the rest is for corners
cut off by slanted edges."""


def assert_no_gap(face: Drawn) -> None:
    """No place between bricks is wider than the joints that the bond's cells keep; nor is a seam between zones.

    Meant for joints that have not given. What is left of a joint when it shrinks from all sides by `_REACH` of its
    width is nothing; a seam along a slant is as wide as both joints of the bond together.
    """
    regions = face.layout.regions
    for region in regions:
        joints = face.joints if len(regions) == 1 else face.joints.intersection(region.extent)
        _assert_narrow(joints, widest_joint(region), f"a gap in {region.mark}")
    if len(regions) > 1:
        seams = face.layout.field.difference(shapely.union_all([region.extent for region in regions]))
        widest = max(sum(region.joints) for region in regions)
        _assert_narrow(seams, widest, "a gap between zones")


def _assert_narrow(joints: BaseGeometry, width: float, words: str) -> None:
    left = joints.buffer(-_REACH * width, join_style="mitre", mitre_limit=2)
    assert left.is_empty, f"{words} at {left.centroid.wkt}"


def widest_joint(region: Region) -> float:
    """The widest joint that a cell of the bond keeps beside or above its unit, inches."""
    size, cells = region.size, region.bond.cells
    faces = [(cell, cell.face(size)) for cell in cells]
    beside = [cell.width.inches(size) - width for cell, (width, _) in faces]
    above = [cell.height.inches(size) - height for cell, (_, height) in faces]
    return max(*beside, *above)


def assert_same_pieces(one: Layout, other: Layout, tolerance: float = NEAR) -> None:
    """Both faces have the same pieces in the same places, whatever order the units come in."""
    assert_same_rows(piece_rows(one), piece_rows(other), tolerance)
    assert abs(one.area.left_out - other.area.left_out) < 1e-4
    assert len(one.left_out.unit) == len(other.left_out.unit)


def assert_same_rows(one: np.ndarray, other: np.ndarray, tolerance: float = NEAR) -> None:
    """Both tables of pieces are the same once sorted by place."""
    assert one.shape == other.shape, "other number of pieces"
    assert np.abs(_by_place(one) - _by_place(other)).max(initial=0) < tolerance, "other pieces"


def _by_place(rows: np.ndarray) -> np.ndarray:
    """By a sum that no two pieces share, as sides are fractions of an inch and these weights are not."""
    return rows[np.argsort(rows[:, :4] @ np.sqrt([1.0, 0.2, 0.3, 0.07]))]


def piece_rows(layout: Layout) -> np.ndarray:
    """Bounds, kind, zone, trimmed or not, cut, small or not, area: one row a piece, in the order of the units."""
    u, trims = layout.units, layout.trims
    cut, small = np.full(len(u), -1), np.zeros(len(u))
    cut[trims.unit], small[trims.unit] = trims.cut, trims.is_small
    areas = shapely.area(brick_outlines(layout))
    bounds = (u.x, u.y, u.x + u.width, u.y + u.height)
    return np.column_stack([*bounds, u.kind, u.zone, u.is_trimmed, cut, small, areas])


def brick_outlines(layout: Layout) -> np.ndarray:
    """One polygon a unit, in the order of `layout.units`."""
    outlines = np.empty(len(layout.units), dtype=object)
    for zone in range(len(layout.regions)):
        chosen = (layout.units.zone == zone) & ~layout.units.is_trimmed
        outlines[chosen] = shapely.polygons(whole_outlines(layout, zone))
    outlines[layout.trims.unit] = _polygons(layout.trims.pieces)
    return outlines


def assert_a_joint_between_zones(layout: Layout) -> None:
    """No two bricks of different regions are nearer than the least joint of their two bonds."""
    outlines, zone = brick_outlines(layout), layout.units.zone
    least = [min(region.joints) for region in layout.regions]
    tree = shapely.STRtree(outlines)
    one, two = tree.query(outlines, predicate="dwithin", distance=max(least, default=0.0))
    one, two = one[zone[one] < zone[two]], two[zone[one] < zone[two]]
    needed = np.minimum(np.array(least)[zone[one]], np.array(least)[zone[two]])
    assert (shapely.distance(outlines[one], outlines[two]) >= needed - NEAR).all(), "zones nearer than a joint"
