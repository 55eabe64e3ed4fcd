"""Cutting bricks of one length into pieces: what may come out of one brick, and first-fit decreasing.

All lengths are whole nanometres, so that nothing is lost to rounding: 1/16 in. is 1,587,500 nm, 1 mm is 1,000,000.
"""

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass

FACTORY_ENDS = 2
"""A brick has two ends that the maker left: no more than so many pieces of it can have one."""


@dataclass(frozen=True, slots=True, order=True)
class Item:
    """A piece to cut: its length in nm, and whether one end must be a factory end."""

    nm: int
    has_factory_end: bool


Way = tuple[Item, ...]
"""What is cut from one brick, the longest first."""

Ways = tuple[tuple[int, Way], ...]
"""How often each way of cutting a brick is used."""


@dataclass(frozen=True, slots=True)
class Stock:
    """Bricks of one length and the kerf of the saw, nm.

    n pieces need a kerf between each two; a kerf behind the last may hang over what is left. So n pieces and n - 1
    kerfs must not be longer than the brick.
    """

    length: int
    kerf: int

    @property
    def room(self) -> int:
        """A brick's length and one kerf: what pieces with a kerf each must fit into."""
        return self.length + self.kerf

    def taken(self, item: Item) -> int:
        """What a piece takes of that room."""
        return item.nm + self.kerf

    def left_over(self, way: Way) -> int:
        """What a brick has left once it is cut so, kerfs not in it; 0 where the last kerf takes the rest."""
        return max(0, self.length - sum(self.taken(item) for item in way))

    def holds(self, way: Way) -> bool:
        """Whether all of it comes out of one brick."""
        has_ends = sum(item.has_factory_end for item in way) <= FACTORY_ENDS
        return has_ends and sum(self.taken(item) for item in way) <= self.room

    def times(self, item: Item, room: int, ends: int) -> int:
        """How many such pieces fit into this room, where `ends` factory ends are still there."""
        fitting = room // self.taken(item)
        return min(fitting, ends) if item.has_factory_end else fitting


def longest_first(wanted: Mapping[Item, int]) -> tuple[Item, ...]:
    """The pieces wanted, the longest first and one with a factory end before one without."""
    return tuple(sorted((item for item, count in wanted.items() if count > 0), reverse=True))


@dataclass(slots=True)
class _Bricks:
    """Bricks in a row that are cut alike so far."""

    count: int
    way: Way
    room: int
    ends: int


def first_fit(stock: Stock, wanted: Mapping[Item, int]) -> Ways:
    """First-fit decreasing: each piece, the longest first, comes from the first brick that has room for it.

    Equal pieces and equal bricks are taken together, which changes nothing but the time. Nothing for nothing wanted.
    """
    row: list[_Bricks] = []
    for item in longest_first(wanted):
        row, rest = _placed(stock, row, item, wanted[item])
        most = stock.times(item, stock.room, FACTORY_ENDS)
        fresh = [_Bricks(-(-rest // most), (), stock.room, FACTORY_ENDS)] if rest else []
        row += _placed(stock, fresh, item, rest)[0]
    return tuple((bricks.count, bricks.way) for bricks in row)


def _placed(stock: Stock, row: list[_Bricks], item: Item, count: int) -> tuple[list[_Bricks], int]:
    """The row with as many of `count` pieces as fit, brick after brick, and how many are left."""
    placed: list[_Bricks] = []
    for bricks in row:
        most = stock.times(item, bricks.room, bricks.ends) if count else 0
        full = min(bricks.count, count // most) if most else 0
        part = min(count - full * most, most) if full < bricks.count else 0
        cut = ((full, most), (1 if part else 0, part), (bricks.count - full - (1 if part else 0), 0))
        placed += [_with(stock, bricks, how_many, item, pieces) for how_many, pieces in cut if how_many]
        count -= full * most + part
    return placed, count


def _with(stock: Stock, bricks: _Bricks, count: int, item: Item, pieces: int) -> _Bricks:
    room = bricks.room - pieces * stock.taken(item)
    ends = bricks.ends - (pieces if item.has_factory_end else 0)
    return _Bricks(count, bricks.way + (item,) * pieces, room, ends)


def bricks_of(ways: Ways) -> int:
    """How many bricks that takes."""
    return sum(times for times, _ in ways)


def just_wanted(ways: Ways, wanted: Mapping[Item, int]) -> Ways:
    """The same bricks without pieces that nobody wants, ways that then are equal together; no brick cut for nothing."""
    left, found = Counter(wanted), Counter[Way]()
    for times, way in ways:
        for _ in range(times):
            kept: list[Item] = []
            for item in way:
                if left[item] > 0:
                    left[item] -= 1
                    kept.append(item)
            if kept:
                found[tuple(kept)] += 1
    return tuple((times, way) for way, times in sorted(found.items(), reverse=True))
