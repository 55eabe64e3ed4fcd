"""Trims as sets of atoms: a sheet is divided so finely that every square cut lies on a line, whole steps apart alike.

A repeat of the bond is divided by all cuts, each brought back to the first repeat. A set of atoms is a whole number
with one bit an atom; moving a trim by whole steps is shifting its bits, and whether two trims overlap is one `&`.
Slanted and curved cuts run through atoms: `inner` holds the atoms that are wholly in the trim, `outer` all it touches.
"""

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from math import ceil, floor

import numpy as np
from numpy.typing import NDArray

from app.brickwork.lattice import Floats, Ints
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
    lower sides. Both have the last one's end in addition.
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

    def atoms(self, rings: Iterable[Floats]) -> Atoms:
        """The atoms of what is inside an odd number of the rings, which lie within the mould."""
        size = len(self.up) - 1, len(self.across)
        turned, touched = np.zeros(size, dtype=np.int64), np.zeros(size, dtype=np.int64)
        for ring in rings:
            self._mark(ring, turned, touched)
        inside = (np.cumsum(turned, axis=1) & 1).astype(np.bool_)[:, :-1]
        on_cut = (np.cumsum(touched, axis=1) > 0)[:, :-1]
        if not on_cut.any():
            both = _as_number(inside)
            return Atoms(both, both)
        return Atoms(_as_number(inside & ~on_cut), _as_number(inside | on_cut))

    def _mark(self, ring: Floats, turned: Ints, touched: Ints) -> None:
        """Note for each row of atoms where the ring is crossed halfway up, and which atoms it runs through."""
        for (x0, y0), (x1, y1) in zip(ring.tolist(), np.roll(ring, -1, axis=0).tolist(), strict=True):
            start, end = ((x0, y0), (x1, y1)) if y0 <= y1 else ((x1, y1), (x0, y0))
            rows = self._rows(start[1], end[1])
            if len(rows):
                self._mark_edge(start, end, rows, turned, touched)

    def _rows(self, low: float, high: float) -> Ints:
        """Rows of atoms that an edge runs through; none for a level edge on a line."""
        first = int(np.searchsorted(self.up, low + _NEAR, "right")) - 1
        last = int(np.searchsorted(self.up, high - _NEAR, "left")) - 1
        return np.arange(max(first, 0), min(last, len(self.up) - 2) + 1)

    def _mark_edge(
        self, start: tuple[float, float], end: tuple[float, float], rows: Ints, turned: Ints, touched: Ints
    ) -> None:
        (x0, y0), (x1, y1) = start, end
        steps = (rows // self._rows_per_line + self.first_line) * self.shape.step[0]
        middle = (self.up[rows] + self.up[rows + 1]) / 2
        ends = np.stack([np.clip(self.up[rows], y0, y1), np.clip(self.up[rows + 1], y0, y1)])
        slope = (x1 - x0) / (y1 - y0) if y1 - y0 > TOLERANCE * TOLERANCE else 0.0
        reach = (
            x0 + (ends - y0) * slope
            if slope
            else np.stack([np.full(len(rows), min(x0, x1)), np.full(len(rows), max(x0, x1))])
        )
        reach = reach - steps
        first = np.searchsorted(self.across, reach.min(axis=0) + _NEAR, "right") - 1
        last = np.searchsorted(self.across, reach.max(axis=0) - _NEAR, "left") - 1
        runs = last >= first
        np.add.at(touched, (rows[runs], np.maximum(first[runs], 0)), 1)
        np.add.at(touched, (rows[runs], last[runs] + 1), -1)
        crossed = (middle >= y0) & (middle < y1)
        at = np.searchsorted(self.across, x0 + (middle - y0) * slope - steps + _NEAR, "right") - 1
        np.add.at(turned, (rows[crossed], np.maximum(at[crossed], 0)), 1)

    @property
    def _rows_per_line(self) -> int:
        return self.atoms_per_line // (len(self.across) - 1)


def _as_number(atoms: NDArray[np.bool_]) -> int:
    return int.from_bytes(np.packbits(atoms.ravel(), bitorder="little").tobytes(), "little")


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
    per_line = (last - first) * len(across)
    return Grid(
        shape,
        np.append(places.ravel(), last * shape.length),
        np.append(levels.ravel(), lines.stop * shape.step[1]),
        lines.start,
        len(across),
        per_line * len(up),
    )


def _residues(shape: Mould, rings: list[Floats]) -> tuple[Floats, Floats, bool]:
    """Upright and level cuts brought back to the first repeat, and whether there are any others."""
    start = np.concatenate(rings)
    end = np.concatenate([np.roll(ring, -1, axis=0) for ring in rings])
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
