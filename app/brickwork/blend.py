"""Colours of a blend laid out over a face: the same every time, shares exact, no large clusters. See `colours_of`.

Each brick gets a number from its own place in its bond, a slow wave with some chance in it, and the numbers are cut
into the shares. Then bricks of clusters that are too large change to a colour that makes none, and bricks change back
where they can until the shares are met. A change far away moves the cuts by little, so most bricks keep their colour.
Where that leaves clusters too large and all shares are equal, colours in even steps are tried too (`blend_even`).
"""

from collections.abc import Iterator, Sequence
from functools import lru_cache
from zlib import crc32

import numpy as np
from numpy.typing import NDArray

from app.brickwork.blend_even import even_colours
from app.brickwork.clusters import Clusters, Colours, Neighbours, apart, clusters, neighbours, size_after
from app.brickwork.lattice import Floats, Ints, lattice
from app.brickwork.layout import Layout
from app.brickwork.swaps import swap_apart
from app.brickwork.touching import touching
from app.panel.blend import Blend
from app.panel.keyed import Keyed

CHANCE = 0.45
"""How much of a full turn of the wave chance may move a brick: more makes clusters, less a pattern that shows."""

ALONG, UPWARD = 2.618, 2.2
"""Length of the wave in head modules and courses: a brick differs from the next one and the two above it by about a
third, and no whole number of bricks is a whole number of waves, so that no course repeats another."""

ROUNDS = 40
"""Most rounds of changes; the cases measured end within 20."""

INNER = 0.3
"""A brick with more neighbours changes back rather sooner: else the commonest colour would gather along edges. Chance,
from 0 to 1, outweighs three neighbours, about the difference between an inner brick and one at an edge."""

LOOSER = (1, 1.5, 2, 4)
"""Where no arrangement is found, shares come first: clusters up to so many times as large are let stand in turn, by
small steps, so that none grows further than it must; beyond the last `_force` takes what is smallest."""

OFFERED = 4.0
"""A colour with too few bricks is taken before one with as many, even where its cluster comes out so many bricks larger
(8 before one with too many): by the usual limit of four bricks, so that breaking up leaves little for `_meet` to do."""

BREAK_COST, MEET_COST = 0.1, 0.05
"""A brick of cluster made against chance and neighbours: it decides between bricks that are about alike, no more."""

GOLDEN = 0.618
"""Golden section: chance moved on by it each round puts other bricks first, with no round near an earlier one."""


def shared_out(count: int, shares: Sequence[float], mark: str = "") -> Ints:
    """`count` pieces by shares of any sum, each within one piece of its share: the largest remainders get the rest.

    Of equal remainders the panel's `mark` chooses, the same every time, so that over many panels no colour is favoured;
    without a mark the first does. Raises ValueError for no shares.
    """
    if not shares:
        raise ValueError("shares: found none, expected one or more")
    exact = count * np.array(shares) / sum(shares)
    whole = np.floor(exact + 1e-9).astype(np.int64)
    most = np.lexsort((turns(mark, len(shares)), np.round(whole - exact, 9)))[: count - int(whole.sum())]
    whole[most] += 1
    return whole


def turns(mark: str, colours: int) -> Floats:
    """A number for each colour, the lowest first where all else is equal: by chance from a panel's mark, the same
    every time; as they stand for no mark."""
    numbers = np.arange(colours)
    return _chance(crc32(mark.encode()), numbers) if mark else numbers.astype(np.float64)


def colours_of(layout: Layout, blend: Blend) -> Colours:
    """The colour of every unit of a face, counting in `blend.colours`; zeros for fewer than two colours.

    Cut pieces and corner units have one like the others. Each colour's share of the face is met to the brick. No
    connected group of touching bricks of one colour is larger than `blend.cluster` unless none was found with these
    shares: two colours can never do it where bricks overlap, as one of them always runs through (the game of Hex).
    """
    if len(blend.colours) < 2 or not len(layout.units):
        return np.zeros(len(layout.units), dtype=np.int8)
    return _kept(Keyed((id(layout),), layout), blend)


@lru_cache(maxsize=4)
def _kept(keyed: Keyed[Layout], blend: Blend) -> Colours:
    """Kept while drawing, order and checks ask one after the other; it holds the layout, so its id stays its own."""
    layout = keyed.value
    units = len(layout.units)
    wanted = shared_out(units, [colour.percent for colour in blend.colours], layout.panel.mark)
    number, chance = _numbers(layout)
    colours = np.empty(units, dtype=np.int8)
    colours[np.argsort(number, kind="stable")] = np.repeat(np.arange(len(wanted)), wanted)
    near = neighbours(units, touching(layout))
    _break_up(near, colours, wanted, blend.cluster, chance)
    _finish(near, colours, wanted, blend.cluster, chance)
    has_equal_shares = len({colour.percent for colour in blend.colours}) == 1
    if has_equal_shares and (over := _over(near, colours, blend.cluster)):
        even = even_colours(layout, wanted)
        _finish(near, even, wanted, blend.cluster, chance)
        colours = even if _over(near, even, blend.cluster) < over else colours
    colours.setflags(write=False)
    return colours


def _finish(near: Neighbours, colours: Colours, wanted: Ints, limit: int, chance: Floats) -> None:
    """Meet the shares, with clusters no larger than they must be."""
    for times in LOOSER:
        _meet(near, colours, wanted, int(times * limit), chance)
    _force(near, colours, wanted, chance)
    swap_apart(near, colours, limit)


def _over(near: Neighbours, colours: Colours, limit: int) -> int:
    """How many bricks stand in clusters above the limit."""
    return int(np.count_nonzero(clusters(near, colours).standing > limit))


def _numbers(layout: Layout) -> tuple[Floats, Floats]:
    """For each unit its number, 0 to 1, and the chance in it, both from the unit's place in its bond alone."""
    units = layout.units
    phase, chance = np.zeros(len(units)), np.zeros(len(units))
    for zone, region in enumerate(layout.regions):
        of = np.flatnonzero(units.zone == zone)
        cell, i, j = units.cell[of], units.i[of], units.j[of]
        lat = lattice(region.bond, region.size, (0.0, 0.0))
        x = (lat.x + lat.width / 2)[cell] + i * lat.across[0] + j * lat.up[0]
        y = (lat.y + lat.height / 2)[cell] + i * lat.across[1] + j * lat.up[1]
        phase[of] = x / (ALONG * region.size.head_module) + y / (UPWARD * region.size.gauge)
        chance[of] = _chance(crc32(region.mark.encode()), cell, i, j)
    return (phase + CHANCE * chance) % 1.0, chance


def _chance(seed: int, *columns: NDArray[np.signedinteger]) -> Floats:
    """A number from 0 to 1 for each row, the same for the same integers on every machine (mixing of splitmix64)."""
    mixed = np.full(len(columns[0]), seed, dtype=np.uint64)
    for column in columns:
        mixed ^= column.astype(np.int64).view(np.uint64)
        mixed += np.uint64(0x9E3779B97F4A7C15)
        mixed = (mixed ^ (mixed >> np.uint64(30))) * np.uint64(0xBF58476D1CE4E5B9)
        mixed = (mixed ^ (mixed >> np.uint64(27))) * np.uint64(0x94D049BB133111EB)
        mixed ^= mixed >> np.uint64(31)
    return (mixed >> np.uint64(11)) / 2.0**53


def _break_up(near: Neighbours, colours: Colours, wanted: Ints, limit: int, chance: Floats) -> None:
    """Change bricks of clusters above the limit to colours that make none, the best surrounded first."""
    for turn in range(ROUNDS):
        now = clusters(near, colours)
        bricks = np.flatnonzero(now.standing > limit)
        if not len(bricks):
            return
        missing = np.sign(wanted - np.bincount(colours, minlength=len(wanted)))
        bricks, to, cost = _best(near, colours, now, bricks, limit, -OFFERED * missing)
        alike = (np.append(colours, -1)[near.rows[bricks]] == colours[bricks][:, None]).sum(axis=1)
        rank = BREAK_COST * cost - alike + (chance[bricks] + GOLDEN * turn) % 1.0
        made = apart(near, colours, now, bricks, to, rank)
        if not made.any():
            return
        colours[bricks[made]] = to[made]


def _meet(near: Neighbours, colours: Colours, wanted: Ints, limit: int, chance: Floats) -> None:
    """Change bricks from colours with too many to colours with too few, as far as no cluster passes the limit."""
    for _ in range(ROUNDS):
        missing = wanted - np.bincount(colours, minlength=len(wanted))
        if not missing.any():
            return
        now = clusters(near, colours)
        bricks = np.flatnonzero(missing[colours] < 0)
        bricks, to, cost = _best(near, colours, now, bricks, limit, np.where(missing > 0, 0.0, np.inf))
        inner = (near.rows[bricks] < near.count).sum(axis=1)
        rank = MEET_COST * cost + chance[bricks] - INNER * inner
        made = np.flatnonzero(apart(near, colours, now, bricks, to, rank))
        made = made[np.argsort(rank[made], kind="stable")]
        made = made[_within(to[made], missing) & _within(colours[bricks[made]], -missing)]
        if not len(made):
            return
        colours[bricks[made]] = to[made]


def _best(
    near: Neighbours, colours: Colours, now: Clusters, bricks: Ints, limit: int, extra: Floats
) -> tuple[Ints, Ints, Floats]:
    """Those of `bricks` that can take another colour within the limit, the colour, and its cost with `extra` a colour:
    the size of the cluster that it makes."""
    cost = np.full((len(bricks), len(extra)), np.inf)
    for colour in np.flatnonzero(np.isfinite(extra)).tolist():
        size = size_after(near, colours, now, bricks, colour)
        can = (size <= limit) & (colours[bricks] != colour)
        cost[can, colour] = size[can] + extra[colour]
    to = cost.argmin(axis=1)
    least = cost[np.arange(len(bricks)), to]
    can = np.isfinite(least)
    return bricks[can], to[can], least[can]


def _within(colours: NDArray[np.signedinteger], most: Ints) -> NDArray[np.bool_]:
    """Which of these, in their order, are among the first `most` of their colour."""
    found = np.zeros(len(colours), dtype=np.bool_)
    for colour in np.flatnonzero(most > 0).tolist():
        found[np.flatnonzero(colours == colour)[: most[colour]]] = True
    return found


def _force(near: Neighbours, colours: Colours, wanted: Ints, chance: Floats) -> None:
    """Meet the shares at last, whatever clusters it makes, the smallest first."""
    for colour, few in _missing(colours, wanted):
        surplus = np.bincount(colours, minlength=len(wanted)) - wanted
        bricks = np.flatnonzero(surplus[colours] > 0)
        size = size_after(near, colours, clusters(near, colours), bricks, colour)
        bricks = bricks[np.lexsort((chance[bricks], size))]
        bricks = bricks[_within(colours[bricks], surplus)][:few]
        colours[bricks] = colour


def _missing(colours: Colours, wanted: Ints) -> Iterator[tuple[int, int]]:
    missing = wanted - np.bincount(colours, minlength=len(wanted))
    for colour in np.flatnonzero(missing > 0).tolist():
        yield colour, int(missing[colour])
