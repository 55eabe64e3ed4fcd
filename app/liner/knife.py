"""What a knife meets along the cuts of a trim, counted and measured from the sheet's own pockets. See `knife_cuts`."""

from collections.abc import Iterator

import numpy as np

from app.brickwork.lattice import Floats
from app.lengths import format_length
from app.liner.cuts import Cut, cuts
from app.liner.own_trims import OwnTrim
from app.liner.pockets import Pockets, pockets
from app.liner.work_values import Counted, KnifeCut, Point
from app.panel.project import Liner
from app.panel.tolerance import TOLERANCE

GUIDED = 1 / 64
"""Inches; a knife this near to the foot of a ridge runs on the floor, guided by it (common practice)."""

_RUNS = 2.0
"""A cut within a ridge for more than this many of its widths runs in it rather than across it."""


def knife_cuts(trim: OwnTrim, liner: Liner, away: tuple[int, int]) -> tuple[KnifeCut, ...]:
    """The cuts of a trim, ring by ring, each with its place in the sheet's pockets and the ridges it meets.

    A pocket's floor is flat, a joint is a raised ridge. `away` is which way sheets follow on, as in `Sheet`.
    """
    grid = pockets(trim.region.bond, trim.region.size, liner.columns, liner.rows, away)
    found = cuts(trim.outline, trim.rings, (1, 1))
    if not found:
        return ()
    ends = np.array([(cut.start, cut.end) for cut in found])
    gaps = list(_gaps(ends, grid))
    return tuple(_knife_cut(cut, gap, grid) for cut, gap in zip(found, gaps, strict=True))


def _knife_cut(cut: Cut, gaps: Floats, grid: Pockets) -> KnifeCut:
    is_run = gaps[:, 1] - gaps[:, 0] > _RUNS * grid.ridge
    in_ridge = float((gaps[is_run, 1] - gaps[is_run, 0]).sum())
    ends = {"x": (cut.start,), "y": (cut.start,), "skew": (cut.start, cut.end)}[cut.axis]
    return KnifeCut(
        cut=cut,
        along=_counts(ends, grid.columns, 0) if cut.axis != "y" else (),
        up=_counts(ends, grid.rows, 1) if cut.axis != "x" else (),
        ridges=tuple(gaps[~is_run].mean(axis=1).tolist()),
        in_ridge=in_ridge,
        beside=_beside(cut, grid) if in_ridge > 0 and cut.axis != "skew" else None,
    )


def _counts(ends: tuple[Point, ...], edges: Floats, axis: int) -> tuple[Counted, ...]:
    """How many of the pockets or courses lie before each end, and how far past the last of them it is."""
    if not len(edges):
        return ()
    return tuple(_counted(end[axis], edges[:, 1]) for end in ends)


def _counted(at: float, far: Floats) -> Counted:
    passed = int(np.searchsorted(far, at + GUIDED, side="right"))
    return Counted(passed, max(0.0, at - float(far[passed - 1])) if passed else at)


def _gaps(ends: Floats, grid: Pockets) -> Iterator[Floats]:
    """For each cut the stretches in which it is on no pocket's floor, from and to along it, shape (n, 2), inches."""
    near, far = _on_floors(ends, grid)
    lengths = np.hypot(*(ends[:, 1] - ends[:, 0]).T)
    for low, high, length in zip(near, far, lengths.tolist(), strict=True):
        met = high > low
        order = np.argsort(low[met])
        starts = np.append(low[met][order] * length, length)
        stops = np.append(0.0, np.maximum.accumulate(high[met][order]) * length)
        gaps = np.column_stack([stops, starts])
        yield gaps[gaps[:, 1] - gaps[:, 0] > 2 * GUIDED]


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


def knife_words(knife: KnifeCut, unit: str = "in") -> str:
    """One cut in words, lengths in `unit`: where it starts in pockets and inches, how many ridges it crosses, and what
    to do where it runs in one."""
    words = [_where(knife, unit)]
    if knife.ridges or not knife.in_ridge:
        words.append(_crossing(len(knife.ridges)))
    if knife.in_ridge:
        words.append(f"{format_length(knife.in_ridge, unit)} of it in a ridge{_move(knife, unit)}")
    return ", ".join(words)


def _where(knife: KnifeCut, unit: str) -> str:
    cut = knife.cut
    match cut.axis:
        case "x":
            return _place(knife.along, "pocket", cut.at, unit) + " along"
        case "y":
            return _place(knife.up, "course", cut.at, unit) + " up"
    ends = [
        f"{_place(knife.along[k : k + 1], 'pocket', end[0], unit)} along and"
        f" {_place(knife.up[k : k + 1], 'course', end[1], unit)} up"
        for k, end in enumerate((cut.start, cut.end))
    ]
    return f"from {ends[0]} to {ends[1]}"


def _place(counted: tuple[Counted, ...], what: str, at: float, unit: str) -> str:
    if not counted or not counted[0].pockets:
        return format_length(at, unit)
    first = counted[0]
    words = f"{first.pockets} {what}{'s' * (first.pockets != 1)}"
    return f"{words} + {format_length(first.past, unit)}" if first.past > GUIDED else words


def _crossing(count: int) -> str:
    return "no ridge" if count == 0 else f"{count} ridge{'s' * (count != 1)} across"


def _move(knife: KnifeCut, unit: str) -> str:
    if knife.beside is None:
        return ""
    way = "away from" if knife.beside > 0 else "towards"
    return f": move it {format_length(abs(knife.beside), unit)} {way} the starting corner"
