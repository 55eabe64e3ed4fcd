"""The last few clusters that are too large: two bricks near one another change places."""

from collections.abc import Iterator

import numpy as np

from app.brickwork.clusters import Colours, Neighbours, clusters

PASSES = 3
"""A cluster far above the limit takes more than one swap; one still there after three has had its best tries."""

REACH = 3
"""How many bricks away the other one may be: some 36 bricks, few enough to try all, near enough to keep the wave."""

FEW, HUGE = 40, 4
"""More clusters than this, or one so many times as large as may be, are not worth the time: the swaps go brick by brick
in plain lists, and where the shares allow what is asked, what the changes before leave is fewer and smaller."""


def swap_apart(near: Neighbours, colours: Colours, limit: int) -> None:
    """Let a brick of each cluster above the limit and one of another colour near it change places, where that leaves
    no cluster above the limit around either; shares stay. Nothing for many or huge clusters: the shares make those."""
    face = None
    for _ in range(PASSES):
        now = clusters(near, colours)
        large = np.flatnonzero(now.size > limit).tolist()
        if not large or len(large) > FEW or now.size.max() > HUGE * limit:
            return
        face = face or _Face(near, colours)
        for group in large:
            face.break_up(np.flatnonzero(now.of == group).tolist(), limit)
        colours[:] = face.colours


class _Face:
    """The colours as a list, one brick changed at a time."""

    def __init__(self, near: Neighbours, colours: Colours) -> None:
        self.rows = [[other for other in row if other < near.count] for row in near.rows.tolist()]
        self.colours = colours.tolist()

    def break_up(self, members: list[int], limit: int) -> None:
        """The first swap that leaves everything around within the limit, or else below this cluster's size."""
        for most in (limit, len(members) - 1):
            if any(self._tried(brick, other, most) for brick, other in self._swaps(members)):
                return

    def _tried(self, brick: int, other: int, most: int) -> bool:
        """Whether the two have changed places: only where that leaves no cluster above `most` around either."""
        self._swap(brick, other)
        around = {brick, other, *self.rows[brick], *self.rows[other]}
        is_good = not any(self.reaches_over(one, most) for one in around)
        if not is_good:
            self._swap(brick, other)
        return is_good

    def reaches_over(self, brick: int, limit: int) -> bool:
        """Whether more than `limit` bricks of its colour hang together with this one."""
        found, edge, colour = {brick}, [brick], self.colours[brick]
        while edge and len(found) <= limit:
            new = {one for one in self.rows[edge.pop()] if self.colours[one] == colour} - found
            found |= new
            edge += new
        return len(found) > limit

    def _swaps(self, members: list[int]) -> Iterator[tuple[int, int]]:
        for brick in members:
            around, found = {brick}, [brick]
            for _ in range(REACH):
                around |= {two for one in found for two in self.rows[one]}
                found = sorted(around)
            yield from ((brick, other) for other in found if self.colours[other] != self.colours[brick])

    def _swap(self, brick: int, other: int) -> None:
        colours = self.colours
        colours[brick], colours[other] = colours[other], colours[brick]
