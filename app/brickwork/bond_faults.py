"""Whether a bond's cells cover the plane exactly once with one brick size, and where they do not."""

from dataclasses import dataclass
from itertools import product
from math import hypot

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from app.brickwork.bond import Bond
from app.brickwork.lattice import Floats, Ints
from app.panel.faults import Fault
from app.panel.size import BrickSize
from app.panel.tolerance import TOLERANCE
from app.panel.wording import said

MOST_FAULTS = 5
LEAST_AREA = 1e-4
"""Square inches: under a hair's breadth along a brick; far over float round-off."""

Vector = tuple[float, float]


def tiling_faults(bond: Bond, size: BrickSize, unit: str = "in") -> tuple[Fault, ...]:
    """Cells that overlap and holes between them, at most five of each, for one brick size.

    Places are from the motif's own corner, in modules and in the project's `unit`. A bond without cells, or with
    vectors that are nothing or parallel, gives the one fault that says so.
    """
    words = _Words(size, unit)
    across, up = ((x.inches(size), y.inches(size)) for x, y in (bond.across, bond.up))
    unusable = _vector_faults(across, up, words) if bond.cells else [Fault("cells", "no cells", "at least one cell")]
    if unusable:
        return tuple(unusable)
    boxes = np.array([[part.inches(size) for part in (c.x, c.y, c.width, c.height)] for c in bond.cells])
    short = _shortest_faults(across, up, boxes, words)
    if short:
        return tuple(short)
    patch = _patch(boxes, *_reduced(across, up))
    overlaps = _overlaps(patch, words)
    is_covered = not overlaps and abs(float(boxes[:, 2] @ boxes[:, 3]) - _area(across, up)) < LEAST_AREA
    return tuple(overlaps if is_covered else [*overlaps, *_holes(patch, words)])


@dataclass(frozen=True, slots=True)
class _Words:
    """How places and areas are said."""

    size: BrickSize
    unit: str

    @property
    def brick(self) -> str:
        return f"with brick {self.size.name}"

    def place(self, x: float, y: float) -> str:
        size = self.size
        across, up = _plain(x / size.head_module), _plain(y / size.gauge)
        return f"x {said(x, self.unit)} ({across} P), y {said(y, self.unit)} ({up} G)"

    def area(self, inches: float) -> str:
        return f"{_plain(inches, 2)} sq in." if self.unit in ("in", "ft") else f"{inches * 645.16:,.0f} sq mm"


def _plain(number: float, places: int = 3) -> str:
    return f"{round(number, places) + 0.0:,.{places}f}".rstrip("0").rstrip(".")


def _area(across: Vector, up: Vector) -> float:
    """Area of one repeat, square inches; negative where the second vector runs to the right of the first."""
    return across[0] * up[1] - across[1] * up[0]


def _vector_faults(across: Vector, up: Vector, words: _Words) -> list[Fault]:
    for path, vector in (("across", across), ("up", up)):
        if hypot(*vector) < TOLERANCE:
            return [Fault(path, f"a repeat by nothing {words.brick}", "a step to the next motif")]
    turn = _area(across, up)
    if abs(turn) < TOLERANCE * hypot(*across) * hypot(*up):
        return [Fault("up", f"the same direction as across {words.brick}", "another direction than across")]
    if turn < 0 or abs(across[0]) < TOLERANCE:
        found = f"across {_step(across, words)} and up {_step(up, words)} {words.brick}"
        return [Fault("up", found, "across to the right and up to the left of it, as with brick modular")]
    return []


def _step(vector: Vector, words: _Words) -> str:
    return f"({said(vector[0], words.unit)}, {said(vector[1], words.unit)})"


def _reduced(one: Vector, two: Vector) -> tuple[Vector, Vector]:
    """The two shortest vectors of the same lattice (Lagrange's reduction), the shorter first."""
    while True:
        if hypot(*two) < hypot(*one):
            one, two = two, one
        times = round((one[0] * two[0] + one[1] * two[1]) / (one[0] ** 2 + one[1] ** 2))
        if times == 0:
            return one, two
        two = (two[0] - times * one[0], two[1] - times * one[1])


def _shortest_faults(across: Vector, up: Vector, boxes: Floats, words: _Words) -> list[Fault]:
    """A repeat shorter than a cell is narrow lays the cell over itself."""
    step = hypot(*_reduced(across, up)[0])
    cell = int(boxes[:, 2:].min(axis=1).argmax())
    narrow = float(boxes[cell, 2:].min())
    if step > narrow - TOLERANCE:
        return []
    found = f"an overlap with its own repeat {said(step, words.unit)} away {words.brick}"
    return [Fault(f"cells[{cell}]", found, f"a repeat of at least {said(narrow, words.unit)}")]


@dataclass(frozen=True, slots=True)
class _Patch:
    """Cells and their repeats around one motif: outlines, whose they are, and which of them stand in the first repeat.

    `moved` is by how much each first cell was moved to come near the corner of the repeat.
    """

    outlines: NDArray[np.object_]
    cell: Ints
    first: Ints
    moved: Floats
    one: Vector
    two: Vector

    def window(self, low: int, high: int) -> shapely.Polygon:
        """The parallelogram of repeats from `low` to `high` both ways."""
        steps = [(low, low), (high, low), (high, high), (low, high)]
        (ax, ay), (ux, uy) = self.one, self.two
        return shapely.Polygon([(i * ax + j * ux, i * ay + j * uy) for i, j in steps])


def _patch(boxes: Floats, one: Vector, two: Vector) -> _Patch:
    """Every cell moved into the repeat at the corner, and repeated over that repeat and the ones around it."""
    basis = np.array([one, two])
    inverse = np.linalg.inv(basis)
    moved = np.floor(boxes[:, :2] @ inverse + 1e-9) @ basis
    low = boxes[:, :2] - moved
    reach = np.ceil(np.abs(inverse).T @ boxes[:, 2:].max(axis=0)).astype(int) + 3
    steps = np.array(list(product(*(range(-n, n + 1) for n in reach.tolist()))))
    corners = (low[None, :, :] + (steps @ basis)[:, None, :]).reshape(-1, 2)
    cell = np.tile(np.arange(len(boxes)), len(steps))
    top = corners + boxes[cell, 2:]
    outlines = shapely.box(corners[:, 0], corners[:, 1], top[:, 0], top[:, 1])
    first = int(np.flatnonzero((steps == 0).all(axis=1))[0]) * len(boxes) + np.arange(len(boxes))
    return _Patch(outlines, cell, first, moved, one, two)


def _overlaps(patch: _Patch, words: _Words) -> list[Fault]:
    """The largest overlap of each two cells, the one told that comes later in the motif."""
    tree = shapely.STRtree(patch.outlines)
    mine, theirs = tree.query(patch.outlines[patch.first])
    other = patch.cell[theirs]
    x0, y0, x1, y1 = _shared(patch.outlines[patch.first[mine]], patch.outlines[theirs])
    area = np.maximum(x1 - x0, 0) * np.maximum(y1 - y0, 0)
    chosen = (area > LEAST_AREA) & (patch.first[mine] != theirs) & (other <= mine)
    faults: dict[tuple[int, int], Fault] = {}
    for k in sorted(np.flatnonzero(chosen).tolist(), key=lambda k: (-round(float(area[k]), 4), hypot(x0[k], y0[k]))):
        pair = int(mine[k]), int(other[k])
        if pair not in faults:
            x, y = patch.moved[pair[0]] + (x0[k], y0[k])
            faults[pair] = _overlap(pair, float(area[k]), words.place(float(x), float(y)), words)
    return [faults[pair] for pair in sorted(faults)[:MOST_FAULTS]]


def _shared(ones: NDArray[np.object_], others: NDArray[np.object_]) -> tuple[Floats, Floats, Floats, Floats]:
    """Bounds of what two boxes share; right before left, or top below bottom, where they share nothing."""
    one, other = shapely.bounds(ones).T, shapely.bounds(others).T
    low, high = np.maximum(one[:2], other[:2]), np.minimum(one[2:], other[2:])
    return low[0], low[1], high[0], high[1]


def _overlap(pair: tuple[int, int], area: float, place: str, words: _Words) -> Fault:
    mine, other = pair
    whom = "its own repeat" if mine == other else f"cells[{other}]"
    found = f"an overlap with {whom} of {words.area(area)} at {place} {words.brick}"
    return Fault(f"cells[{mine}]", found, "cells that touch and do not overlap")


def _holes(patch: _Patch, words: _Words) -> list[Fault]:
    """Each hole once, where it is nearest the motif's corner; a strip without end as far as one repeat has of it."""
    tree = shapely.STRtree(patch.outlines)
    window = patch.window(-2, 3)
    covered = shapely.union_all(patch.outlines[tree.query(window)])
    free = _parts(window.difference(covered))
    holes = _one_of_each(patch, [hole for hole in free if hole.distance(window.exterior) > TOLERANCE])
    if free and not holes:
        holes = _parts(patch.window(0, 1).difference(covered))
    return [_hole(hole, words) for hole in holes[:MOST_FAULTS]]


def _parts(shape: BaseGeometry) -> list[BaseGeometry]:
    return [part for part in shapely.get_parts(shape).tolist() if part.area > LEAST_AREA]


def _one_of_each(patch: _Patch, holes: list[BaseGeometry]) -> list[BaseGeometry]:
    """The holes that are not repeats of each other, each where it is nearest to the corner, right of it and above."""
    inverse = np.linalg.inv(np.array([patch.one, patch.two]))
    kept: dict[tuple[float, ...], BaseGeometry] = {}
    for hole in sorted(holes, key=_nearness):
        place = np.round(np.array(hole.bounds[:2]) @ inverse, 5) % 1.0
        kept.setdefault(tuple(np.round(place, 5).tolist()), hole)
    return list(kept.values())


def _nearness(hole: BaseGeometry) -> tuple[bool, float]:
    x, y = hole.bounds[:2]
    return min(x, y) < -TOLERANCE, hypot(x, y)


def _hole(hole: BaseGeometry, words: _Words) -> Fault:
    found = f"a hole of {words.area(hole.area)} at {words.place(*hole.bounds[:2])} {words.brick}"
    return Fault("cells", found, "cells that cover the face without a gap")
