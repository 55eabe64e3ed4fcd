"""Keeping labels apart: moved along their line with least shift, or shown only here and there."""

from collections.abc import Sequence


def spread(at: Sequence[float], apart: float) -> list[float]:
    """Positions at least `apart` from each other, in the order given (rising), with the least sum of squared shifts.

    Empty for none. Runs that crowd each other move as one block about their mean.
    """
    blocks: list[list[float]] = []
    for k, wanted in enumerate(at):
        blocks.append([wanted - k * apart])
        while len(blocks) > 1 and _mean(blocks[-2]) > _mean(blocks[-1]):
            last = blocks.pop()
            blocks[-1] += last
    even = [_mean(block) for block in blocks for _ in block]
    return [value + k * apart for k, value in enumerate(even)]


def _mean(values: Sequence[float]) -> float:
    return sum(values) / len(values)


def that_fit(ranks: Sequence[int], room: float, apart: float) -> list[int]:
    """Indices of the labels kept when only room / apart of them fit: lowest rank first, then first come; in order."""
    most = max(1, int(room / apart))
    kept = sorted(range(len(ranks)), key=lambda k: (ranks[k], k))[:most]
    return sorted(kept)


def sparse(x: Sequence[float], y: Sequence[float], kinds: Sequence[object], clear: float, again: float) -> list[int]:
    """Indices of labels to show: none in a cell `clear` wide that has one, one of a kind in a cell `again` wide."""
    taken: set[tuple[int, int]] = set()
    shown: set[tuple[object, int, int]] = set()
    chosen = []
    for k, kind in enumerate(kinds):
        seen = (kind, int(x[k] // again), int(y[k] // again))
        cell = (int(x[k] // clear), int(y[k] // clear))
        if seen not in shown and not taken.intersection(_around(cell)):
            shown.add(seen)
            taken.add(cell)
            chosen.append(k)
    return chosen


def _around(cell: tuple[int, int]) -> list[tuple[int, int]]:
    return [(cell[0] + dx, cell[1] + dy) for dx in (-1, 0, 1) for dy in (-1, 0, 1)]
