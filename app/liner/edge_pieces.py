"""Where courses stop in the open and a finishing edge piece ends them. See `edge_pieces`."""

from collections.abc import Iterator
from itertools import groupby

import numpy as np
import shapely

from app.brickwork.boundary import Edges, edges
from app.brickwork.lattice import Flags, Floats, Ints, runs
from app.brickwork.layout import Layout, whole_outlines
from app.liner.work_values import EdgePieces, EdgeRun
from app.panel.geometry import inches, openings_polygon, outline_polygon, shape_polygon, strip_polygon
from app.panel.tolerance import TOLERANCE

_NEAR = 10 * TOLERANCE
"""Inches; a side of brick this near to the field's boundary lies on it."""

_BEYOND = 1e-3
"""Inches past the boundary at which one looks whether plain concrete follows."""


def edge_pieces(layout: Layout) -> EdgePieces:
    """The field's boundary where brick ends at it and plain concrete follows, in straight runs.

    A run goes on across the joints between pieces that end at one line, as the edge piece does. There is none at a
    flush or return edge, a strip or a plate, where a form or the strip itself stands, and none where the field ends in
    a joint. Kinds: "upright", "level", "skew". Empty for no brick.
    """
    if not len(layout.units):
        return EdgePieces(())
    boundary = edges(layout.field)
    which, low, high = _brick_along(layout, boundary)
    kept = _is_open(layout, boundary, which, (low + high) / 2)
    order = np.lexsort((low[kept], which[kept]))
    found = zip(*(column[kept][order].tolist() for column in (which, low, high)), strict=True)
    joint = _widest_joint(layout) + _NEAR
    found_runs = (
        _run(boundary, edge, start, end)
        for edge, some in groupby(found, key=lambda row: row[0])
        for start, end in _joined([(start, end) for _, start, end in some], joint)
    )
    return EdgePieces(tuple(found_runs))


def _widest_joint(layout: Layout) -> float:
    sizes = [region.size for region in layout.regions]
    return max(max(size.head_joint.inches, size.gauge - size.height.inches) for size in sizes)


def _joined(spans: list[tuple[float, float]], joint: float) -> Iterator[tuple[float, float]]:
    """Rising spans, those with no more than a joint between them as one."""
    start, end = spans[0]
    for low, high in spans[1:]:
        if low - end > joint:
            yield start, end
            start = low
        end = max(end, high)
    yield start, end


def _run(boundary: Edges, edge: int, start: float, end: float) -> EdgeRun:
    (x, y), (dx, dy) = _start(boundary)[edge].tolist(), _direction(boundary)[edge].tolist()
    kind = "upright" if abs(dx) <= TOLERANCE else "level" if abs(dy) <= TOLERANCE else "skew"
    return EdgeRun(kind, (x + dx * start, y + dy * start), (x + dx * end, y + dy * end), end - start)


def _start(boundary: Edges) -> Floats:
    return np.column_stack([boundary.x0, boundary.y0])


def _direction(boundary: Edges) -> Floats:
    run = np.column_stack([boundary.x1 - boundary.x0, boundary.y1 - boundary.y0])
    direction: Floats = run / np.maximum(np.hypot(run[:, 0], run[:, 1]), TOLERANCE)[:, None]
    return direction


def _brick_along(layout: Layout, boundary: Edges) -> tuple[Ints, Floats, Floats]:
    """Sides of brick that lie on the boundary: on which of its edges, from and to how far along it, inches."""
    sides = _sides(layout)
    side, which = _on_same_lines(sides, boundary)
    start, direction = _start(boundary)[which], _direction(boundary)[which]
    off = sides[side] - start[:, None]
    along = (off * direction[:, None]).sum(axis=2)
    across = np.abs(off[..., 0] * direction[:, None, 1] - off[..., 1] * direction[:, None, 0]).max(axis=1)
    length = np.hypot(boundary.x1 - boundary.x0, boundary.y1 - boundary.y0)[which]
    low, high = np.clip(along.min(axis=1), 0, length), np.clip(along.max(axis=1), 0, length)
    on = (across <= _NEAR) & (high - low > _NEAR)
    return which[on], low[on], high[on]


def _on_same_lines(sides: Floats, boundary: Edges) -> tuple[Ints, Ints]:
    """Pairs (side, edge) that can lie on one line: upright and level ones by their place, skew ones by nearness."""
    flat = [np.abs(sides[:, 0, axis] - sides[:, 1, axis]) <= _NEAR for axis in (0, 1)]
    pairs = [
        _at_same_place(np.flatnonzero(flat[0]), sides[:, 0, 0], np.flatnonzero(boundary.upright), boundary.x0),
        _at_same_place(np.flatnonzero(flat[1]), sides[:, 0, 1], np.flatnonzero(boundary.level), boundary.y0),
    ]
    skew, slant = np.flatnonzero(~boundary.upright & ~boundary.level), np.flatnonzero(~flat[0] & ~flat[1])
    if len(skew) and len(slant):
        ends = np.column_stack([boundary.x0, boundary.y0, boundary.x1, boundary.y1])[skew].reshape(-1, 2, 2)
        lines, tree = shapely.linestrings(sides[slant]), shapely.STRtree(shapely.linestrings(ends))
        near = tree.query(lines, predicate="dwithin", distance=_NEAR)
        pairs.append((slant[near[0]], skew[near[1]]))
    one, two = (np.concatenate(column) for column in zip(*pairs, strict=True))
    return one, two


def _at_same_place(side: Ints, side_at: Floats, edge: Ints, edge_at: Floats) -> tuple[Ints, Ints]:
    edge = edge[np.argsort(edge_at[edge])]
    rising = edge_at[edge]
    first = np.searchsorted(rising, side_at[side] - _NEAR)
    count = np.searchsorted(rising, side_at[side] + _NEAR) - first
    owner, rank = runs(count)
    return side[owner], edge[first[owner] + rank]


def _sides(layout: Layout) -> Floats:
    """Sides of all pieces of brick, shape (sides, 2, 2)."""
    pieces = layout.trims.pieces
    after = np.arange(len(pieces.points)) + 1
    after[pieces.first + pieces.count - 1] = pieces.first
    whole = np.concatenate([whole_outlines(layout, zone) for zone in range(len(layout.regions))])
    of_whole = np.stack([whole, whole[:, [1, 2, 3, 0]]], axis=2).reshape(-1, 2, 2)
    return np.concatenate([of_whole, np.stack([pieces.points, pieces.points[after]], axis=1)])


def _is_open(layout: Layout, boundary: Edges, which: Ints, at: Floats) -> Flags:
    """Whether plain concrete lies just beyond these places of the boundary; the field is on its left."""
    direction = _direction(boundary)[which]
    beyond = _start(boundary)[which] + direction * at[:, None] + _BEYOND * direction[:, ::-1] * (1, -1)
    panel = layout.panel
    taken = [openings_polygon(panel), *(shape_polygon(plate.shape) for plate in panel.plates)]
    taken += [strip_polygon(inches(strip.line), strip.width.inches) for strip in panel.strips]
    concrete = outline_polygon(panel).difference(shapely.union_all(taken))
    shapely.prepare(concrete)
    is_open: Flags = shapely.contains_xy(concrete, beyond[:, 0], beyond[:, 1])
    return is_open
