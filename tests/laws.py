"""What holds of every layout, whatever the panel: checked by shapely alone, from the outlines of the pieces."""

import numpy as np
import shapely

from app.brickwork.layout import Layout, whole_outlines
from app.brickwork.pieces import Pieces

NEAR = 1e-6


def _polygons(pieces: Pieces) -> np.ndarray:
    rings = shapely.linearrings(pieces.points, indices=np.repeat(np.arange(len(pieces.unit)), pieces.count))
    return shapely.polygons(rings)


def assert_laws(layout: Layout) -> None:
    """No piece overlaps another or leaves the field, and bricks, joints and left out make up the field."""
    bricks = brick_outlines(layout)
    left = _polygons(layout.left_out)
    _assert_no_overlap(np.concatenate([bricks, left]))
    _assert_inside(layout, bricks)
    _assert_areas(layout, bricks, left)


def _assert_no_overlap(pieces: np.ndarray) -> None:
    tree = shapely.STRtree(pieces)
    one, two = tree.query(pieces, predicate="intersects")
    one, two = one[one < two], two[one < two]
    shared = shapely.area(shapely.intersection(pieces[one], pieces[two]))
    assert shared.max(initial=0) < NEAR, "pieces overlap"


def _assert_inside(layout: Layout, bricks: np.ndarray) -> None:
    shapely.prepare(layout.field)
    doubtful = bricks[~shapely.covers(layout.field, bricks)]
    outside = shapely.area(shapely.difference(doubtful, layout.field))
    assert outside.max(initial=0) < NEAR, "a piece leaves the field"


def _assert_areas(layout: Layout, bricks: np.ndarray, left: np.ndarray) -> None:
    """Joints are what shapely finds of the field when every piece is taken away; nothing of the engine's sums."""
    field = layout.field.area
    joints = layout.field.difference(shapely.multipolygons(np.concatenate([bricks, left]))).area
    assert abs(shapely.area(bricks).sum() - layout.area.brick) <= NEAR * (1 + field)
    assert abs(shapely.area(left).sum() - layout.area.left_out) <= NEAR * (1 + field)
    assert abs(field - layout.area.brick - joints - layout.area.left_out) <= 1e-6 * field + NEAR


def assert_same_pieces(one: Layout, other: Layout, tolerance: float = NEAR) -> None:
    """Both faces have the same pieces in the same places, whatever order the units come in."""
    mine, theirs = _sorted_rows(one), _sorted_rows(other)
    assert mine.shape == theirs.shape, "other number of pieces"
    assert np.abs(mine - theirs).max(initial=0) < tolerance, "other pieces"
    assert abs(one.area.left_out - other.area.left_out) < 1e-4
    assert len(one.left_out.unit) == len(other.left_out.unit)


def _sorted_rows(layout: Layout) -> np.ndarray:
    """Bounds, kind, zone, trimmed or not, cut, small or not, area: one row a piece, sorted by place."""
    u, trims = layout.units, layout.trims
    cut, small = np.full(len(u), -1), np.zeros(len(u))
    cut[trims.unit], small[trims.unit] = trims.cut, trims.is_small
    areas = shapely.area(brick_outlines(layout))
    rows = np.column_stack([u.x, u.y, u.x + u.width, u.y + u.height, u.kind, u.zone, u.is_trimmed, cut, small, areas])
    return rows[np.argsort(rows[:, :4] @ np.array([1.0, 0.317, 0.173, 0.111]))]


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
