"""Groups of touching bricks of one colour, and which bricks may change without making one too large."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from app.brickwork.lattice import Flags, Floats, Ints

Colours = NDArray[np.int8]


@dataclass(frozen=True, slots=True, eq=False)
class Neighbours:
    """Who touches whom: pairs of bricks, and the same as a row of neighbours a brick, filled up with `count`."""

    count: int
    pairs: Ints
    rows: Ints


@dataclass(frozen=True, slots=True, eq=False)
class Clusters:
    """The group of each brick, and how many bricks each group has."""

    of: Ints
    size: Ints

    @property
    def standing(self) -> Ints:
        """For each brick, how many bricks its group has."""
        return self.size[self.of]


def neighbours(count: int, pairs: Ints) -> Neighbours:
    """Rows of neighbours from pairs of `count` bricks; none for no pairs."""
    ends, others = np.concatenate([pairs, pairs[:, ::-1]]).T
    order = np.argsort(ends, kind="stable")
    ends, others = ends[order], others[order]
    degree = np.bincount(ends, minlength=count)
    rows = np.full((count, max(int(degree.max(initial=0)), 1)), count)
    rows[ends, np.arange(len(ends)) - (np.cumsum(degree) - degree)[ends]] = others
    return Neighbours(count, pairs, rows)


def clusters(near: Neighbours, colours: Colours) -> Clusters:
    """Connected groups of one colour; none for no bricks."""
    first, second = near.pairs[colours[near.pairs[:, 0]] == colours[near.pairs[:, 1]]].T
    lowest = _lowest(near.count, first, second)
    is_lowest = lowest == np.arange(near.count)
    of = (np.cumsum(is_lowest) - 1)[lowest]
    return Clusters(of, np.bincount(of, minlength=int(is_lowest.sum())))


def _lowest(count: int, first: Ints, second: Ints) -> Ints:
    """For each of `count` bricks the lowest number in its group: groups that touch join, until none touch another."""
    of: Ints = np.arange(count)
    while len(first):
        one, other = of[first], of[second]
        np.minimum.at(of, np.maximum(one, other), np.minimum(one, other))
        while not np.array_equal(of, above := of[of]):
            of = above
        apart_still = of[first] != of[second]
        first, second = first[apart_still], second[apart_still]
    return of


def size_after(near: Neighbours, colours: Colours, now: Clusters, bricks: Ints, colour: int) -> Ints:
    """How large the group of each of `bricks` would be, were it alone to take `colour`."""
    group = np.sort(_groups_beside(near, colours, now, bricks, np.full(len(bricks), colour)), axis=1)
    is_new = np.ones(group.shape, dtype=np.bool_)
    is_new[:, 1:] = group[:, 1:] != group[:, :-1]
    total: Ints = 1 + np.where(is_new, np.append(now.size, 0)[group], 0).sum(axis=1)
    return total


def apart(near: Neighbours, colours: Colours, now: Clusters, bricks: Ints, to: Ints, rank: Floats) -> Flags:
    """Which of the changes (`bricks` take colours `to`) can be made at once: of two that touch one another, one brick
    or one group, the one of lower rank."""
    places = np.column_stack([bricks, near.rows[bricks]])
    is_first = _is_first(places, rank, near.count)
    groups = _groups_beside(near, colours, now, bricks, to)
    is_first[is_first] = _is_first(groups[is_first], rank[is_first], len(now.size))
    return is_first


def _groups_beside(near: Neighbours, colours: Colours, now: Clusters, bricks: Ints, to: Ints) -> Ints:
    """Groups of the colour each brick is to take that touch it, filled up with the number of groups."""
    beside = near.rows[bricks]
    is_same = np.append(colours, -1)[beside] == to[:, None]
    return np.where(is_same, np.append(now.of, 0)[beside], len(now.size))


def _is_first(claims: Ints, rank: Floats, nobody: int) -> Flags:
    """Which rows have the lowest rank of all that claim any of the same things; `nobody` is claimed by all."""
    lowest = np.full(nobody + 1, np.inf)
    np.minimum.at(lowest, claims.ravel(), np.repeat(rank, claims.shape[1]))
    lowest[nobody] = np.inf
    return np.asarray((lowest[claims] >= rank[:, None]).all(axis=1))
