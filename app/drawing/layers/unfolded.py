"""The panel's edge and the rims of its openings where no return folds out: a fold is no cut edge."""

from collections.abc import Iterator, Sequence

import numpy as np
import shapely

from app.brickwork.returns import returns
from app.drawing.marks import Floats, Lines, Mark
from app.drawing.scene import Scene
from app.drawing.styles import Style
from app.panel.rings import opening_rings, rims

FRAME = "face"


def marks(scene: Scene) -> Iterator[Mark]:
    """As the outline, less the edges and sides at which a return folds out."""
    panel, found = scene.layout.panel, returns(scene.layout)
    folds = shapely.MultiLineString([[(one.edge_at, one.bottom), (one.edge_at, one.top)] for one in found])
    if panel.openings:
        yield from _less(opening_rings(panel), folds, "opening rim")
    yield from _less(rims(panel), folds, "outline")


def _less(rings: Sequence[Floats], folds: shapely.MultiLineString, style: Style) -> Iterator[Lines]:
    """One mark; none where every line is a fold."""
    closed = shapely.MultiLineString([np.vstack([ring, ring[:1]]) for ring in rings])
    left = shapely.line_merge(closed.difference(folds))
    lines = [_joined(shapely.get_coordinates(line)) for line in shapely.get_parts(left)]
    if lines:
        yield Lines(np.concatenate(lines), np.array([len(line) for line in lines]), style)


def _joined(line: Floats) -> Floats:
    """A closed line runs on by one point, so that its first corner is mitred as the others are."""
    return np.vstack([line, line[1:2]]) if np.array_equal(line[0], line[-1]) else line
