"""Fit: which control lines brick meets when joints give a little and bricks do not. See `fit`."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import accumulate

from app.brickwork.fit_lines import Control, Grid1, Outcome, outcomes
from app.brickwork.stretch import Stretch
from app.panel.tolerance import TOLERANCE

COST_UNIT = 1e-12
"""Square inches; costs are counted in whole ones, so that equal choices tie whatever the order of sums."""

_SLACK = 1e-9
"""Inches of float round-off that a joint at its limit may have."""


@dataclass(frozen=True, slots=True)
class Limits:
    """A joint changes by at most `give` inches and stays between `least` and `most` of its nominal width: 1/4 to
    1/2 in. for 3/8 in. (common practice)."""

    give: float
    least: float = 2 / 3
    most: float = 4 / 3

    def allowed(self, joint: float) -> float:
        """How far a joint of nominally `joint` inches may change either way, inches; 0 for no joint."""
        return max(0.0, min(self.give, joint * (1 - self.least), joint * (self.most - 1)))


@dataclass(frozen=True, slots=True)
class Fitted:
    """The best fit along one axis: every control's outcome in the order given, where lines really stand, how far a
    joint was allowed to change (inches), and the summed squared changes of one course's joints (square inches)."""

    outcomes: tuple[Outcome, ...]
    stretch: Stretch
    allowed: float
    cost: float

    @property
    def impossible(self) -> tuple[Outcome, ...]:
        """Required controls that no fit meets together with the others; their `needed` is over `allowed`."""
        return tuple(each for each in self.outcomes if each.control.matter == "required" and not each.is_met)

    @property
    def missed(self) -> tuple[Outcome, ...]:
        """Controls of any matter that are missed."""
        return tuple(each for each in self.outcomes if not each.is_met)


Key = tuple[int, int, int, int]
"""What is least, in this order: required missed, wanted missed, cost in `COST_UNIT`, free missed."""


@dataclass(frozen=True, slots=True)
class _Target:
    """Controls at one place, and how many of each matter."""

    at: float
    required: int
    wanted: int
    free: int
    is_origin: bool = False


def fit(controls: Sequence[Control], grid: Grid1, give: float) -> Fitted:
    """Choose the controls to meet and the whole numbers of steps between neighbouring met ones; exact.

    Least, in this order: the number of required controls missed, of wanted ones missed, the sum of squared changes of
    one course's joints ((steps / cell_steps) * change^2 between neighbours), the number of free ones missed. Of what
    still ties, the lowest control is met, the next one after it, and so on, with the fewest steps. Controls within the
    tolerance are one place. A pinned origin is always met. Beyond the outermost met controls joints stay nominal; no
    controls leave all as it is. Without a pin the whole grid shifts, by at most half a step.
    """
    allowed = Limits(give).allowed(grid.joint)
    targets = _targets(controls, grid)
    path, cost = _best(targets, grid, allowed)
    stretch = _stretch(targets, path, grid)
    return Fitted(outcomes(controls, grid, stretch), stretch, allowed, cost * COST_UNIT)


def _targets(controls: Sequence[Control], grid: Grid1) -> list[_Target]:
    """The places to meet, rising; the pinned origin weighs more than all required controls together."""
    groups: list[list[Control]] = []
    pin = Control("", grid.origin, "origin")
    for control in sorted([*controls, pin] if grid.is_pinned else controls, key=lambda each: each.at):
        if not groups or control.at - groups[-1][0].at > TOLERANCE:
            groups.append([])
        groups[-1].append(control)
    return [_target([each.matter for each in group], group, len(controls) + 1) for group in groups]


def _target(matters: list[str], group: list[Control], pin_weight: int) -> _Target:
    is_origin = "origin" in matters
    required = matters.count("required") + pin_weight * is_origin
    at = next((each.at for each in group if each.matter == "origin"), group[0].at)
    return _Target(at, required, matters.count("wanted"), matters.count("free"), is_origin)


Path = list[tuple[int, int]]
"""Met targets, rising, each with the steps from the one before (0 for the first)."""


def _best(targets: list[_Target], grid: Grid1, allowed: float) -> tuple[Path, int]:
    """The path of the least key, and its cost; from the last target down, the best rest after meeting each."""
    missed = list(accumulate(((t.required, t.wanted, t.free) for t in targets), _summed, initial=(0, 0, 0)))
    count = len(targets)
    rest: list[tuple[Key, int, int]] = [((0, 0, 0, 0), count, 0)] * count
    for k in range(count - 1, -1, -1):
        ways = [
            _way(missed[k + 1], missed[n], rest[n][0], cost, n, steps)
            for n, steps, cost in _next(k, targets, grid, allowed)
        ]
        ways.append(_way(missed[k + 1], missed[count], (0, 0, 0, 0), 0, count, 0))
        rest[k] = min(ways)
    if not targets:
        return [], 0
    key, first, steps = min(_way((0, 0, 0), missed[n], rest[n][0], 0, n, 0) for n in range(count))
    path: Path = []
    while first < count:
        path.append((first, steps))
        _, first, steps = rest[first]
    return path, key[2]


def _summed(one: tuple[int, int, int], two: tuple[int, int, int]) -> tuple[int, int, int]:
    return one[0] + two[0], one[1] + two[1], one[2] + two[2]


def _next(k: int, targets: list[_Target], grid: Grid1, allowed: float) -> Iterator[tuple[int, int, int]]:
    """Targets that can be met next after target k: which, in how many steps, at what cost."""
    for n in range(k + 1, len(targets)):
        distance = targets[n].at - targets[k].at
        for steps in grid.near_steps(distance):
            change = grid.change(distance, steps)
            if abs(change) <= allowed + _SLACK:
                yield n, steps, round(steps / grid.cell_steps * change * change / COST_UNIT)


def _way(
    before: tuple[int, int, int], until: tuple[int, int, int], rest: Key, cost: int, n: int, steps: int
) -> tuple[Key, int, int]:
    """The key of meeting target n next, all missed from `before` until it; then n and steps, which settle ties."""
    required, wanted = rest[0] + until[0] - before[0], rest[1] + until[1] - before[1]
    return (required, wanted, rest[2] + cost, rest[3] + until[2] - before[2]), n, steps


def _stretch(targets: list[_Target], path: Path, grid: Grid1) -> Stretch:
    if not path:
        return Stretch()
    lines = list(accumulate(steps for _, steps in path))
    origin = next((line for line, (n, _) in zip(lines, path, strict=True) if targets[n].is_origin), None)
    shift = grid.nearest_line(targets[path[0][0]].at) if origin is None else -origin
    nominal = tuple(grid.line(line + shift) for line in lines)
    return Stretch(nominal, tuple(targets[n].at for n, _ in path))
