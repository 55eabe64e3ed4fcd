"""Parts of lines at one place along the tape, joined where they hold the liner together."""

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from math import inf

from app.panel.tolerance import TOLERANCE

Point2 = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Part:
    """A straight part of a line across the tape: running dimension, name, and ends the other way; inches."""

    at: float
    name: str
    low: float
    high: float


@dataclass(frozen=True, slots=True)
class Across:
    """What a line across the tape has to hold: the brick field's ends the other way, and one sheet's length there.

    `openings(at)` gives the stretches without liner right beyond a running dimension, rising; inches.
    """

    low: float
    high: float
    sheet: float
    openings: Callable[[float], Sequence[Point2]]


def joined(parts: Iterable[Part], across: Across) -> Iterator[Part]:
    """Parts at one place as one where less than a sheet of liner lies free between them; endless at ends as near.

    Openings in a gap do not count, as the liner around them is one with the next sheets. Rising along the tape, then
    the other way; nothing for no parts.
    """
    group: list[Part] = []
    for part in sorted(parts, key=lambda part: part.at):
        if group and part.at > group[0].at + TOLERANCE:
            yield from _runs(group, across)
            group = []
        group.append(part)
    yield from _runs(group, across)


def _runs(group: list[Part], across: Across) -> Iterator[Part]:
    runs: list[Part] = []
    for part in sorted(group, key=lambda part: part.low):
        if runs and _is_short(runs[-1].high, part.low, part.at, across):
            runs[-1] = _both(runs[-1], part)
        else:
            runs.append(part)
    for run in runs:
        low = -inf if _is_short(across.low, run.low, run.at, across) else run.low
        high = inf if _is_short(run.high, across.high, run.at, across) else run.high
        yield replace(run, low=low, high=high)


def _both(run: Part, part: Part) -> Part:
    names = run.name.split(", ")
    name = run.name if part.name in names else ", ".join((*names, part.name))
    return replace(run, high=max(run.high, part.high), name=name)


def _is_short(start: float, end: float, at: float, across: Across) -> bool:
    """Whether no stretch of liner from `start` to `end` is as long as a sheet."""
    if end - start < across.sheet:
        return True
    for low, high in across.openings(at):
        if low - start >= across.sheet:
            return False
        start = max(start, high)
    return end - start < across.sheet
