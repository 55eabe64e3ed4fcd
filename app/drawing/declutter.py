"""Keeping labels apart: moved along their line with least shift, or shown only here and there."""

from collections.abc import Sequence
from itertools import accumulate, pairwise

import numpy as np


def spread(at: Sequence[float], sizes: Sequence[float]) -> list[float]:
    """Middles of labels of these sizes, in the order given (rising), none over another, with the least sum of squared
    shifts from where they are wanted.

    Empty for none. Runs that crowd each other move as one block about their mean.
    """
    pairs = [(one + other) / 2 for one, other in pairwise(sizes)]
    offsets = [0.0, *accumulate(pairs)][: len(at)]
    blocks: list[list[float]] = []
    for wanted, offset in zip(at, offsets, strict=True):
        blocks.append([wanted - offset])
        while len(blocks) > 1 and _mean(blocks[-2]) > _mean(blocks[-1]):
            last = blocks.pop()
            blocks[-1] += last
    even = [_mean(block) for block in blocks for _ in block]
    return [value + offset for value, offset in zip(even, offsets, strict=True)]


def _mean(values: Sequence[float]) -> float:
    return sum(values) / len(values)


def that_fit(ranks: Sequence[int], sizes: Sequence[float], room: float) -> list[int]:
    """Indices of the labels kept when not all fit into `room`, in order: rank 0 always, then the next rank, first come
    first kept."""
    kept: list[int] = []
    for k in sorted(range(len(ranks)), key=lambda k: (ranks[k], k)):
        if ranks[k] == 0 or sizes[k] <= room:
            kept.append(k)
            room -= sizes[k]
    return sorted(kept)


def sparse(x: Sequence[float], y: Sequence[float], kinds: Sequence[object], clear: float, again: float) -> list[int]:
    """Indices of labels to show: none in a cell `clear` wide that has one, one of a kind in a cell `again` wide."""
    near_one: set[int] = set()
    shown: set[tuple[object, int]] = set()
    chosen = []
    cells, wide = _cells(x, y, clear), _cells(x, y, again)
    for k, (cell, seen) in enumerate(zip(cells, zip(kinds, wide, strict=True), strict=True)):
        if cell not in near_one and seen not in shown:
            shown.add(seen)
            near_one.update([cell + step for step in _AROUND])
            chosen.append(k)
    return chosen


_ROW = 1 << 32
"""Cells from one row to the next: more than any drawing has."""

_AROUND = tuple(up * _ROW + across for up in (-1, 0, 1) for across in (-1, 0, 1))
"""From a cell to itself and its neighbours."""


def _cells(x: Sequence[float], y: Sequence[float], size: float) -> list[int]:
    """The number of the cell of each point."""
    across, up = (np.floor_divide(np.asarray(values, dtype=np.float64), size).astype(np.int64) for values in (x, y))
    numbers: list[int] = (up * _ROW + across).tolist()
    return numbers
