"""What a knife meets along the cuts of a sheet, counted and measured from the sheet's own pockets. See `knife_cuts`."""

from collections.abc import Iterator, Sequence

import numpy as np
import shapely

from app.brickwork.lattice import Floats
from app.liner.cut_lines import NEAR
from app.liner.cuts import Cut
from app.liner.pockets import Pockets
from app.liner.work_values import Counted, KnifeCut, Point
from app.panel.tolerance import TOLERANCE

GUIDED = 1 / 64
"""Inches; a knife this near to the foot of a ridge runs on the floor, guided by it (common practice)."""

AT_LINE = 1 / 32
"""Inches; a cut nearer than this to the end of a pocket is at the joint line: half of the tape's smallest mark."""

_RUNS = 2.0
"""A cut within a ridge for more than this many of its widths runs in it rather than across it."""


def knife_cuts(cuts: Sequence[Cut], grid: Pockets) -> tuple[KnifeCut, ...]:
    """Each cut with its place in the sheet's pockets and the ridges it meets; none for no cuts.

    A pocket's floor is flat, a joint is a raised ridge; between the teeth of a sheet a knife meets nothing.
    """
    if not cuts:
        return ()
    ends = np.array([(cut.start, cut.end) for cut in cuts])
    gaps = list(_gaps(ends, grid))
    return tuple(_knife_cut(cut, gap, grid) for cut, gap in zip(cuts, gaps, strict=True))


def _knife_cut(cut: Cut, gaps: Floats, grid: Pockets) -> KnifeCut:
    is_run = gaps[:, 1] - gaps[:, 0] > _RUNS * grid.ridge
    in_ridge = float((gaps[is_run, 1] - gaps[is_run, 0]).sum())
    ends = {"x": (cut.start,), "y": (cut.start,), "skew": (cut.start, cut.end)}[cut.axis]
    return KnifeCut(
        cut=cut,
        along=counts(ends, grid.columns, 0) if cut.axis != "y" else (),
        up=counts(ends, grid.rows, 1) if cut.axis != "x" else (),
        ridges=tuple(gaps[~is_run].mean(axis=1).tolist()),
        in_ridge=in_ridge,
        beside=_beside(cut, grid) if in_ridge > 0 and cut.axis != "skew" else None,
    )


def counts(ends: Sequence[Point], edges: Floats, axis: int) -> tuple[Counted, ...]:
    """How many of the pockets or courses lie before each end, and how far past the last of them it is.

    `edges` are the columns or rows of `Pockets`, `axis` is 0 along, 1 up; none where there are no edges.
    """
    if not len(edges):
        return ()
    return tuple(_counted(end[axis], edges) for end in ends)


def _counted(at: float, edges: Floats) -> Counted:
    """Whole ones from the near edge of the first: between a sheet's teeth one starts where the pockets do."""
    passed = int(np.searchsorted(edges[:, 1], at + AT_LINE, side="right"))
    past = max(0.0, at - float(edges[passed - 1, 1])) if passed else at - float(edges[0, 0])
    return Counted(passed, past, _joint(edges, passed))


def _joint(edges: Floats, passed: int) -> float:
    """How wide the joint is behind so many: beyond the last, and before the first, as wide as the one next to it."""
    between = edges[1:, 0] - edges[:-1, 1]
    return float(between[min(max(passed, 1), len(between)) - 1]) if len(between) else 0.0


def _gaps(ends: Floats, grid: Pockets) -> Iterator[Floats]:
    """For each cut the stretches in which it is on no pocket's floor, from and to along it, shape (n, 2), inches."""
    near, far = _on_floors(ends, grid)
    lengths = np.hypot(*(ends[:, 1] - ends[:, 0]).T)
    rows = zip(near, far, lengths.tolist(), _in_sheet(ends, grid), strict=True)
    for low, high, length, sheet in rows:
        met = high > low
        order = np.argsort(low[met])
        starts = np.append(low[met][order] * length, length)
        stops = np.append(0.0, np.maximum.accumulate(high[met][order]) * length)
        gaps = np.stack([np.maximum(stops[:, None], sheet[:, 0]), np.minimum(starts[:, None], sheet[:, 1])], axis=-1)
        gaps = gaps.reshape(-1, 2)
        yield gaps[gaps[:, 1] - gaps[:, 0] > 2 * GUIDED]


def _in_sheet(ends: Floats, grid: Pockets) -> Iterator[Floats]:
    """From and to along each cut where it is in the sheet, not in the air between its teeth, rising, shape (n, 2)."""
    inner = shapely.buffer(shapely.Polygon(grid.outline), -NEAR, join_style="mitre")
    parts, owner = shapely.get_parts(shapely.intersection(inner, shapely.linestrings(ends)), return_index=True)
    for k, (start, _) in enumerate(ends):
        found = [np.hypot(*(shapely.get_coordinates(part) - start).T) for part in parts[owner == k]]
        spans = np.array([(at.min() - NEAR, at.max() + NEAR) for at in found if len(at)]).reshape(-1, 2)
        yield spans[np.argsort(spans[:, 0])]


def _on_floors(ends: Floats, grid: Pockets) -> tuple[Floats, Floats]:
    """From and to which share of each segment each pocket lies under it, shape (cuts, pockets); not, where to <= from.

    A segment is clipped to the four half planes of a pocket, each moved out by `GUIDED`.
    """
    side = grid.sides
    start, run = ends[:, 0], ends[:, 1] - ends[:, 0]
    off = start[:, None, None, :] - grid.corners[None]
    inside = side[..., 0] * off[..., 1] - side[..., 1] * off[..., 0] + GUIDED * np.hypot(side[..., 0], side[..., 1])
    grows = side[None, ..., 0] * run[:, None, None, 1] - side[None, ..., 1] * run[:, None, None, 0]
    flat = np.abs(grows) <= TOLERANCE
    at = -inside / np.where(flat, 1.0, grows)
    near = np.where(~flat & (grows > 0), at, np.where(flat & (inside < 0), 2.0, 0.0)).max(axis=2)
    far = np.where(~flat & (grows < 0), at, 1.0).min(axis=2)
    return np.maximum(near, 0.0), np.minimum(far, 1.0)


def _beside(cut: Cut, grid: Pockets) -> float | None:
    """The least move of an upright or level cut, to a pocket's edge within a ridge's width, that keeps it off ridges
    over their length; None where none does."""
    axis = 0 if cut.axis == "x" else 1
    moves = np.unique((grid.corners[..., axis] - cut.at).round(6))
    moves = moves[np.abs(moves) <= grid.ridge + TOLERANCE]
    moves = moves[np.argsort(np.abs(moves), kind="stable")]
    step = np.eye(2)[axis]
    ends = np.array([cut.start, cut.end]) + moves[:, None, None] * step
    for move, gaps in zip(moves.tolist(), _gaps(ends, grid), strict=True):
        if not ((gaps[:, 1] - gaps[:, 0]) > _RUNS * grid.ridge).any():
            return float(move)
    return None
