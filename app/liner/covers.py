"""What each region's liner has to cover: the brick field, divided among its regions without a gap."""

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from app.brickwork.layout import Layout
from app.brickwork.regions import Region
from app.panel.tolerance import TOLERANCE


def covers(layout: Layout) -> list[BaseGeometry]:
    """For each region, in order, its extent with its share of the joints between regions; face frame, inches.

    A unit owns the joint to its right and above, so a joint between two regions goes to the one on its left or below;
    what is out of reach of both goes to the first region. Together they are the brick field. Empty for no regions.
    """
    extents = [region.extent for region in layout.regions]
    if len(extents) < 2:
        return [layout.field] * len(extents)
    gap = _areas(layout.field.difference(shapely.union_all(extents)))
    shares = []
    for region in layout.regions:
        moved = _moved_by_its_joints(region)
        shares.append(_areas(gap.intersection(moved)))
        gap = _areas(gap.difference(moved))
    shares[0] = _areas(shares[0].union(gap))
    return [_closed(_areas(extent.union(share))) for extent, share in zip(extents, shares, strict=True)]


def _closed(shape: BaseGeometry) -> BaseGeometry:
    """The shape without cracks narrower than the tolerance, as between a slanted extent and its share of a joint."""
    grown = shapely.buffer(shape, TOLERANCE, join_style="mitre")
    closed: BaseGeometry = shapely.buffer(grown, -TOLERANCE, join_style="mitre")
    return closed


def _areas(shape: BaseGeometry) -> BaseGeometry:
    """The shape without points, lines and shreds, on which later steps would stumble."""
    parts = shapely.get_parts(shape)
    return shapely.multipolygons(parts[shapely.area(parts) > TOLERANCE * TOLERANCE]) if len(parts) else shape


def _moved_by_its_joints(region: Region) -> BaseGeometry:
    """Where the joints to the right of and above a region lie: the region moved by its own joints."""
    head, bed = region.joints
    moves = np.array([(head, 0.0), (0.0, bed), (head, bed)])
    return shapely.union_all([_moved(region.extent, move) for move in moves])


def _moved(shape: BaseGeometry, by: np.ndarray) -> BaseGeometry:
    return shapely.transform(shape, lambda points: points + by)
