"""Trims as sets of atoms: a sheet is divided so finely that every square cut lies on a line, whole steps apart alike.

A repeat of the bond is divided by all cuts, each brought back to the first repeat. A set of atoms is a whole number
with one bit an atom; moving a trim by whole steps is shifting its bits, and whether two trims overlap is one `&`.
Slanted and curved cuts run through atoms: `inner` holds the atoms that are wholly in the trim, `outer` all it touches.
"""

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from math import ceil, floor

import numpy as np

from app.brickwork.lattice import Floats, Ints, runs
from app.liner.mould import Mould
from app.panel.tolerance import TOLERANCE

_NEAR = 10 * TOLERANCE
"""Inches; cuts nearer than this to each other are one line."""

_MOST_CUTS = 96
"""Cuts of one repeat, each way; beyond that the rarest are treated as slanted ones are."""

_SLANTED_PARTS = 8
"""Into how many equal parts a repeat is divided, each way, where there are slanted cuts."""


@dataclass(frozen=True, slots=True)
class Atoms:
    """The atoms of a trim or sheet: those wholly in it, and all it touches; the same where no cut is slanted."""

    inner: int
    outer: int

    def moved(self, bits: int) -> "Atoms":
        """Moved by so many bits."""
        if self.inner == self.outer:
            both = _moved(self.inner, bits)
            return Atoms(both, both)
        return Atoms(_moved(self.inner, bits), _moved(self.outer, bits))

    def with_all(self, other: "Atoms") -> "Atoms":
        """Those of both."""
        return Atoms(self.inner | other.inner, self.outer | other.outer)


def _moved(atoms: int, bits: int) -> int:
    return atoms << bits if bits >= 0 else atoms >> -bits


@dataclass(frozen=True, slots=True)
class Grid:
    """How the sheets of a mould are divided.

    `across` are the atoms' left sides in inches along a line of repeats, from where its first repeat starts; `up` their
    lower sides. Both have the last one's end in addition. Bits go up the sheet first, then along.
    """

    shape: Mould
    across: Floats
    up: Floats
    first_line: int
    atoms_per_step: int
    atoms_per_line: int

    def bits(self, place: int, line: int) -> int:
        """By how many bits atoms move for so many steps along and up."""
        return line * self.atoms_per_line + place * self.atoms_per_step

    def atoms(self, rings: Sequence[Floats]) -> Atoms:
        """The atoms of what is inside an odd number of the rings, which lie within the mould."""
        edges = self._by_row(*_edges(rings))
        inside, cut = self._inside(edges), self._cut_through(edges)
        return Atoms(inside & ~cut, inside | cut) if cut else Atoms(inside, inside)

    def _by_row(self, start: Floats, end: Floats) -> "_EdgesByRow":
        """Each edge once for every row of atoms that it runs through; a level edge on a line for none."""
        first = np.maximum(np.searchsorted(self.up, start[:, 1] + _NEAR, "right") - 1, 0)
        last = np.minimum(np.searchsorted(self.up, end[:, 1] - _NEAR, "left") - 1, len(self.up) - 2)
        edge, rank = runs(np.maximum(last - first + 1, 0))
        row = first[edge] + rank
        moved = (row // self.atoms_per_line + self.first_line).astype(np.float64) * self.shape.step[0]
        return _EdgesByRow(row, start[edge], end[edge], self.up[row], self.up[row + 1], moved)

    def _inside(self, edges: "_EdgesByRow") -> int:
        """The atoms before which the edges are crossed an odd number of times, halfway up each row."""
        middle = (edges.low + edges.high) / 2
        is_crossed = (middle >= edges.start[:, 1]) & (middle < edges.end[:, 1])
        column = np.searchsorted(self.across, edges.x_at(middle) + _NEAR, "right") - 1
        atoms, step = self._as_number(column[is_crossed], edges.row[is_crossed]), len(self.up) - 1
        while step < self.count:
            atoms ^= atoms << step
            step *= 2
        return atoms & ((1 << self.count) - 1)

    def _cut_through(self, edges: "_EdgesByRow") -> int:
        """The atoms that edges run through, along none of their sides."""
        left, right = edges.reach()
        first = np.searchsorted(self.across, left + _NEAR, "right") - 1
        last = np.searchsorted(self.across, right - _NEAR, "left") - 1
        edge, rank = runs(np.maximum(last - first + 1, 0))
        if not len(edge):
            return 0
        places = np.unique(np.column_stack([first[edge] + rank, edges.row[edge]]), axis=0)
        return self._as_number(places[:, 0], places[:, 1])

    def _as_number(self, column: Ints, row: Ints) -> int:
        """The atoms named an odd number of times."""
        atoms = np.zeros((len(self.across), len(self.up) - 1), dtype=np.bool_)
        np.logical_xor.at(atoms, (np.maximum(column, 0), row), True)
        return int.from_bytes(np.packbits(atoms.ravel(), bitorder="little").tobytes(), "little")

    @property
    def count(self) -> int:
        """Atoms in all."""
        return (len(self.across) - 1) * (len(self.up) - 1)


@dataclass(frozen=True, slots=True)
class _EdgesByRow:
    """Edges, the lower end first, with the row of atoms each runs through; `moved` is how far on its line starts."""

    row: Ints
    start: Floats
    end: Floats
    low: Floats
    high: Floats
    moved: Floats

    def x_at(self, y: Floats) -> Floats:
        """Where each edge is at a height, along its line."""
        rise = self.end[:, 1] - self.start[:, 1]
        is_level = rise <= TOLERANCE * TOLERANCE
        share = np.where(is_level, 0.0, (y - self.start[:, 1]) / np.where(is_level, 1.0, rise))
        x: Floats = self.start[:, 0] + share * (self.end[:, 0] - self.start[:, 0]) - self.moved
        return x

    def reach(self) -> tuple[Floats, Floats]:
        """The left and right end of each edge within its row, along its line."""
        low, high = np.maximum(self.low, self.start[:, 1]), np.minimum(self.high, self.end[:, 1])
        is_level = self.end[:, 1] - self.start[:, 1] <= TOLERANCE * TOLERANCE
        one, two = self.x_at(low), np.where(is_level, self.end[:, 0] - self.moved, self.x_at(high))
        return np.minimum(one, two), np.maximum(one, two)


def _edges(rings: Sequence[Floats]) -> tuple[Floats, Floats]:
    """Both ends of every edge, the lower one first."""
    start = np.concatenate(rings)
    end = np.concatenate([_onward(ring) for ring in rings])
    is_down = (end[:, 1] < start[:, 1])[:, None]
    return np.where(is_down, end, start), np.where(is_down, start, end)


def _onward(ring: Floats) -> Floats:
    """Each corner's next one."""
    return np.concatenate((ring[1:], ring[:1]))


def grid(shape: Mould, rings: Iterable[Floats]) -> Grid:
    """Divide the mould by the square cuts of all these rings and its own outline."""
    x, y, is_slanted = _residues(shape, [*rings, shape.outline])
    across, up = _cuts(x, shape.length, is_slanted), _cuts(y, shape.step[1], is_slanted)
    (low_x, low_y), (high_x, high_y) = shape.outline.min(axis=0).tolist(), shape.outline.max(axis=0).tolist()
    lines = range(floor(low_y / shape.step[1] + _NEAR), ceil(high_y / shape.step[1] - _NEAR))
    first = min(floor((low_x - k * shape.step[0]) / shape.length + _NEAR) for k in lines)
    last = max(ceil((high_x - k * shape.step[0]) / shape.length - _NEAR) for k in lines)
    places = np.arange(first, last)[:, None] * shape.length + across
    levels = np.array(lines)[:, None] * shape.step[1] + up
    return Grid(
        shape=shape,
        across=np.append(places.ravel(), last * shape.length),
        up=np.append(levels.ravel(), lines.stop * shape.step[1]),
        first_line=lines.start,
        atoms_per_step=len(across) * len(up) * len(lines),
        atoms_per_line=len(up),
    )


def _residues(shape: Mould, rings: list[Floats]) -> tuple[Floats, Floats, bool]:
    """Upright and level cuts brought back to the first repeat, and whether there are any others."""
    start = np.concatenate(rings)
    end = np.concatenate([_onward(ring) for ring in rings])
    span = np.abs(end - start)
    level, upright = span[:, 1] <= _NEAR, span[:, 0] <= _NEAR
    y = np.mod(start[level, 1], shape.step[1])
    x = [cut for k in np.flatnonzero(upright & ~level) for cut in _along_lines(shape, start[k], end[k])]
    return np.mod(np.array(x), shape.length), y, bool((~level & ~upright).any())


def _along_lines(shape: Mould, start: Floats, end: Floats) -> Iterator[float]:
    """Where an upright cut stands along each line of repeats it runs through."""
    low, high = sorted((float(start[1]), float(end[1])))
    first, last = floor(low / shape.step[1] + _NEAR), ceil(high / shape.step[1] - _NEAR)
    for line in range(first, last):
        yield float(start[0]) - line * shape.step[0]


def _cuts(at: Floats, period: float, is_slanted: bool) -> Floats:
    """Different cuts of one repeat, the first at 0, rising; of very many the commonest."""
    parts = np.arange(_SLANTED_PARTS if is_slanted else 1) * period / (_SLANTED_PARTS if is_slanted else 1)
    rising = np.sort(at[(at > _NEAR) & (at < period - _NEAR)])
    starts = np.flatnonzero(np.diff(rising, prepend=-1.0) > _NEAR)
    counts = Counter(dict(zip(rising[starts].tolist(), np.diff(starts, append=len(rising)).tolist(), strict=True)))
    kept = np.array([cut for cut, _ in counts.most_common(_MOST_CUTS)])
    rising = np.sort(np.concatenate([parts, kept]))
    return rising[np.diff(rising, prepend=-1.0) > _NEAR]
