"""The concrete cut into bands, and an order in which each touches one that is placed before it."""

from collections.abc import Iterator
from dataclasses import dataclass

import shapely
from shapely.geometry.base import BaseGeometry

from app.panel.tolerance import TOLERANCE
from app.site.first_drop import Drop, first_drop
from app.site.places import inner_point
from app.site.pour_grid import Grid

ROWS = 4
"""Rows of the grid in a band: with 12 in. as wide as one rakes and vibrates from its edge (common practice)."""

NEAR, LEAST_TOUCH = 1e-3, 1e-2
"""Inches: bands this near touch, along at least this length, so that a corner alone is no touch."""

Cut = tuple[int, BaseGeometry]


@dataclass(frozen=True, slots=True)
class Piece:
    """One band: its row, from the foot or the left up, its concrete, the band that it follows, where the stream
    begins and its way over that edge; the first of what hangs together follows none and has a first drop."""

    row: int
    shape: BaseGeometry
    after: int | None
    begins: tuple[float, float]
    heading: tuple[float, float] = (0.0, 0.0)
    drop: Drop | None = None


def bands(grid: Grid, field: BaseGeometry) -> list[Piece]:
    """All bands in the order of placing; `after` counts in the list from 0.

    They run along the shorter side of the panel, `ROWS` rows of the grid or fewer each. Each part of the concrete that
    openings cut off from the rest has a first drop of its own. None for no concrete.
    """
    found: list[Piece] = []
    for part in shapely.get_parts(grid.concrete):
        if part.area > TOLERANCE:
            found.extend(_spread(grid, field, _cut(grid, part), len(found)))
    return found


def is_level(grid: Grid) -> bool:
    """Whether bands run across the panel's width, which is then its shorter side."""
    return grid.panel.width <= grid.panel.height


def _cut(grid: Grid, part: BaseGeometry) -> list[Cut]:
    rows, step = (grid.rows, grid.step[1]) if is_level(grid) else (grid.columns, grid.step[0])
    count = -(-rows // ROWS)
    lines = [round(k * rows / count) * step for k in range(count + 1)]
    lines[0], lines[-1] = lines[0] - 1, lines[-1] + 1
    found: list[Cut] = []
    for k in range(count):
        pieces = shapely.get_parts(part.intersection(_box(grid, lines[k], lines[k + 1])))
        found += [(k, piece) for piece in pieces if piece.area > TOLERANCE]
    return found


def _box(grid: Grid, low: float, high: float) -> BaseGeometry:
    wide, tall = grid.panel.width, grid.panel.height
    return shapely.box(-1, low, wide + 1, high) if is_level(grid) else shapely.box(low, -1, high, tall + 1)


def _spread(grid: Grid, field: BaseGeometry, cuts: list[Cut], before: int) -> Iterator[Piece]:
    """From the first drop on, of the bands that touch what is placed the one in the row nearest to the drop's, and of
    these the one nearest to the last; where none touches, a drop of its own begins again."""
    touch = _touches(cuts)
    waiting, placed = set(range(len(cuts))), dict[int, int]()
    first, last = 0, -1
    while waiting:
        open_ = [k for k in waiting if touch[k] & placed.keys()]
        if open_:
            last = min(open_, key=lambda k: _rank(cuts, k, first, last))
            neighbour = max(touch[last] & placed.keys(), key=placed.__getitem__)
            made = _following(grid, cuts[last], cuts[neighbour], before + placed[neighbour])
        else:
            last, made = _begun(grid, field, cuts, waiting)
            first = made.row
        placed[last] = len(placed)
        waiting.discard(last)
        yield made


def _following(grid: Grid, cut: Cut, before: Cut, after: int) -> Piece:
    way = float(cut[0] - before[0])
    return Piece(*cut, after, _contact(cut[1], before[1]), (0.0, way) if is_level(grid) else (way, 0.0))


def _rank(cuts: list[Cut], k: int, first: int, last: int) -> tuple[int, float, int]:
    return abs(cuts[k][0] - first), float(cuts[k][1].distance(cuts[last][1])), k


def _begun(grid: Grid, field: BaseGeometry, cuts: list[Cut], waiting: set[int]) -> tuple[int, Piece]:
    """A band in the first or last row of what waits, so that concrete runs one way, with its first drop."""
    rows = [cuts[k][0] for k in waiting]
    ends = [k for k in sorted(waiting) if cuts[k][0] in (min(rows), max(rows))]
    chosen, drop = first_drop(grid, field, [cuts[k][1] for k in ends])
    return ends[chosen], Piece(*cuts[ends[chosen]], None, drop.middle, drop=drop)


def _touches(cuts: list[Cut]) -> list[set[int]]:
    shapes = [shape for _, shape in cuts]
    found: list[set[int]] = [set() for _ in shapes]
    one, two = shapely.STRtree(shapes).query(shapes, predicate="dwithin", distance=NEAR)
    for a, b in zip(one.tolist(), two.tolist(), strict=True):
        if a < b and _joint(shapes[a], shapes[b]).area >= NEAR * LEAST_TOUCH:
            found[a].add(b)
            found[b].add(a)
    return found


def _joint(one: BaseGeometry, two: BaseGeometry) -> BaseGeometry:
    """What of the second is within `NEAR` of the first: a thread along the edge that they share."""
    return one.buffer(NEAR, join_style="mitre").intersection(two)


def _contact(one: BaseGeometry, two: BaseGeometry) -> tuple[float, float]:
    """A point on the longest stretch along which two bands touch."""
    return inner_point(max(shapely.get_parts(_joint(two, one)), key=lambda part: float(part.area)))
