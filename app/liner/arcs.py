"""Which straight cuts are chords of one arc. See `arcs`."""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from app.brickwork.lattice import Floats
from app.liner.cut_lines import NEAR
from app.panel.rings import CHORDS_TURN

FEWEST = 3
"""Chords that show an arc: any two fit a circle."""

OFF_CIRCLE = 1 / 32
"""Inches; half of the tape's smallest mark: a cut this near to the circle is on it, also where joints gave."""

_ROUND_OFF = 1e-6
"""Inches; corners are no more exact than this."""

Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Arc:
    """An arc by its radius, inches, and its two `ends`; by its middle where it closes to a circle.

    No radius where the arc is too short to tell it, or joints gave.
    """

    radius: float | None
    ends: tuple[Point, ...]

    @property
    def is_circle(self) -> bool:
        """Whether it comes back to where it began."""
        return len(self.ends) == 1


def arcs(ends: Floats) -> Iterator[tuple[list[int], Arc]]:
    """The cuts of each arc by their indices, one after the other; none for fewer than three cuts.

    `ends` has shape (cuts, 2, 2), inches, each cut once, either way round.
    """
    for chain, points in _chains(ends):
        first = 0
        while len(chain) - first >= FEWEST:
            fitting = _fitting(points[first:])
            if fitting >= FEWEST:
                yield chain[first : first + fitting], _arc(points[first : first + fitting + 1])
            first += max(fitting, 1)


def _arc(points: Floats) -> Arc:
    middle, radius = _circle(points)
    told = radius if _doubt(points) <= OFF_CIRCLE else None
    (x0, y0), (x1, y1) = points[[0, -1]].tolist()
    if np.hypot(x1 - x0, y1 - y0) <= 2 * NEAR:
        return Arc(told, ((float(middle[0]), float(middle[1])),))
    return Arc(told, tuple(sorted(((x0, y0), (x1, y1)))))


def _doubt(points: Floats) -> float:
    """How far off the radius may be, inches: points off the circle make it so much more off as the arc is flat."""
    middle, radius = _circle(points)
    off = np.abs(np.hypot(*(_inner(points) - middle).T) - radius).max()
    wide = np.hypot(*(points[:, None] - points).reshape(-1, 2).T).max()
    return float(8 * (radius / wide) ** 2 * max(off, _ROUND_OFF))


def _inner(points: Floats) -> Floats:
    """Without the ends, where there are enough: the first and the last chord may be cut off at a sheet's edge."""
    return points[1:-1] if len(points) >= FEWEST + 2 else points


def _fitting(points: Floats) -> int:
    """How many chords from the first on are of one circle; 0 where not even as few as show one."""
    found = 0
    for count in range(FEWEST, len(points)):
        if not _is_arc(points[: count + 1]):
            break
        found = count
    return found


def _is_arc(points: Floats) -> bool:
    """Whether all points, and the middles of the chords between them, lie on one circle."""
    middle, radius = _circle(points)
    both = np.concatenate([points, (points[1:] + points[:-1]) / 2])
    return bool((np.abs(np.hypot(*(both - middle).T) - radius) <= OFF_CIRCLE).all())


def _circle(points: Floats) -> tuple[Floats, float]:
    """Middle and radius of the circle that fits the points best (least squares, linear in middle and power)."""
    own = _inner(points)
    origin = own.mean(axis=0)
    off = own - origin
    (*way, power), *_ = np.linalg.lstsq(np.column_stack([2 * off, np.ones(len(off))]), (off**2).sum(axis=1), rcond=None)
    return origin + way, float(np.sqrt(power + np.square(way).sum()))


def _chains(ends: Floats) -> Iterator[tuple[list[int], Floats]]:
    """Cuts that follow on one another with slight turns, with the points between them; each cut in one chain."""
    followers = _followers(ends)
    left = set(range(len(ends)))
    starts = [(k, side) for k in sorted(left) for side in (0, 1) if (k, side) not in followers]
    for k, side in (*starts, *((k, 0) for k in range(len(ends)))):
        if k in left:
            yield _walked(ends, followers, k, side, left)


def _walked(
    ends: Floats, followers: dict[tuple[int, int], tuple[int, int]], k: int, side: int, left: set[int]
) -> tuple[list[int], Floats]:
    """From one end of a cut on to the last that follows, taken out of those `left`."""
    chain, points = list[int](), [ends[k, side]]
    while k in left:
        left.remove(k)
        chain.append(k)
        points.append(ends[k, 1 - side])
        k, side = followers.get((k, 1 - side), (k, side))
    return chain, np.array(points)


def _followers(ends: Floats) -> dict[tuple[int, int], tuple[int, int]]:
    """For each end (cut, side) at which just one other cut goes on nearly straight, that one's end."""
    points = ends.reshape(-1, 2)
    near = np.hypot(*np.moveaxis(points[:, None] - points, -1, 0)) <= 2 * NEAR
    out = (ends[:, ::-1] - ends).reshape(-1, 2)
    unit = out / np.maximum(np.hypot(*out.T), NEAR)[:, None]
    is_on = near & (unit @ unit.T < -np.cos(np.radians(CHORDS_TURN)))
    alone = np.flatnonzero((near.sum(axis=1) == 2) & (is_on.sum(axis=1) == 1))
    return {divmod(k, 2): divmod(int(is_on[k].argmax()), 2) for k in alone.tolist()}
