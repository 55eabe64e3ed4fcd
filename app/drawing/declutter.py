"""Keeping labels apart: moved along their line with least shift, or shown only here and there."""

from collections.abc import Sequence
from itertools import accumulate, pairwise


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
    near_one: set[tuple[int, int]] = set()
    shown: set[tuple[object, int, int]] = set()
    chosen = []
    for k, kind in enumerate(kinds):
        seen = (kind, int(x[k] // again), int(y[k] // again))
        cell = (int(x[k] // clear), int(y[k] // clear))
        if cell not in near_one and seen not in shown:
            shown.add(seen)
            near_one.update(_around(cell))
            chosen.append(k)
    return chosen


def _around(cell: tuple[int, int]) -> list[tuple[int, int]]:
    return [(cell[0] + dx, cell[1] + dy) for dx in (-1, 0, 1) for dy in (-1, 0, 1)]
