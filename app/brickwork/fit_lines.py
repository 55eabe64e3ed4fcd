"""Control lines on a grid of bed or head joints, and how each fares where the grid really stands."""

from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import floor

import numpy as np

from app.brickwork.stretch import Stretch
from app.panel.tolerance import TOLERANCE


@dataclass(frozen=True, slots=True)
class Control:
    """A place where a grid line should stand: `at`, inches along the axis.

    `edge` is the control as drawn (an opening's head, say), `ends` whether bricks end there rather than start, `matter`
    is "required", "wanted" or "free", and (x, y) is a point on it in the face.
    """

    name: str
    at: float
    matter: str = "wanted"
    edge: float = 0.0
    ends: bool = False
    x: float = 0.0
    y: float = 0.0


@dataclass(frozen=True, slots=True)
class Grid1:
    """Lines of one axis: line k nominally at `origin + k * step`, inches; where `is_pinned`, line 0 stays there.

    A cell, a `unit` and its `joint` beside it, is `cell_steps` steps.
    """

    origin: float
    step: float
    cell_steps: int
    joint: float
    unit: float
    is_pinned: bool = False

    def line(self, k: int) -> float:
        """Where line k nominally stands, inches."""
        return self.origin + k * self.step

    def nearest_line(self, at: float) -> int:
        """The line nominally nearest to `at`; the upper one of two."""
        return floor((at - self.origin) / self.step + 0.5)

    def change(self, distance: float, steps: int) -> float:
        """Change of each joint, inches, where `steps` steps take up `distance` inches."""
        over = distance - steps * self.step
        return 0.0 if abs(over) <= TOLERANCE else self.cell_steps * over / steps

    def least_change(self, distance: float) -> float:
        """The least change of each joint, inches, that makes `distance` inches a whole number of steps."""
        return min(abs(self.change(distance, steps)) for steps in self.near_steps(distance))

    def near_steps(self, distance: float) -> tuple[int, int]:
        """The whole numbers of steps, at least 1, next to `distance` inches.

        None other can be better: the summed squared change over n steps, (distance - n * step)^2 / n, is convex in n
        and least at distance / step; and the joint's own change falls towards there from both sides.
        """
        fewer = max(1, floor(distance / self.step))
        return fewer, fewer + 1


@dataclass(frozen=True, slots=True)
class Outcome:
    """How one control fares, inches: `off` from it to `line`, the real line nearest to it, and `nearest`, the place of
    its edge that would be met.

    `cut` is the smallest piece that it makes of a whole brick in any course, 0 for none; `joint_change` the change of
    each joint below or left of it; `needed` the change with which it could be met between the met ones beside it.
    """

    control: Control
    is_met: bool
    line: int
    off: float
    nearest: float
    cut: float
    joint_change: float
    needed: float


def outcomes(controls: Sequence[Control], grid: Grid1, stretch: Stretch) -> tuple[Outcome, ...]:
    """How each control fares on the grid as stretched; on the nominal one for `IDENTITY`."""
    return tuple(_outcome(control, grid, stretch) for control in controls)


def _outcome(control: Control, grid: Grid1, stretch: Stretch) -> Outcome:
    near = _lines_near(control.at, grid, stretch)
    line, real = min(near, key=lambda each: abs(each[1] - control.at))
    off = real - control.at
    is_met = abs(off) <= TOLERANCE
    return Outcome(
        control,
        is_met,
        line,
        off,
        control.edge + off,
        _cut(control, near, grid),
        _joint_change(control.at, grid, stretch),
        0.0 if is_met else _needed(control.at, grid, stretch),
    )


def _lines_near(at: float, grid: Grid1, stretch: Stretch) -> list[tuple[int, float]]:
    """Lines and where they really stand, from more than a cell before `at` to more than one after."""
    middle, reach = grid.nearest_line(stretch.nominal(at)), grid.cell_steps + 1
    lines = range(middle - reach, middle + reach + 1)
    nominal = np.array([grid.line(k) for k in lines])
    return list(zip(lines, stretch.real(nominal).tolist(), strict=True))


def _cut(control: Control, near: list[tuple[int, float]], grid: Grid1) -> float:
    pieces = [control.at - real if control.ends else real - control.at for _, real in near]
    cuts = [piece + grid.unit for piece in pieces if TOLERANCE - grid.unit < piece < -TOLERANCE]
    return min(cuts, default=0.0)


def _joint_change(at: float, grid: Grid1, stretch: Stretch) -> float:
    above = bisect_left(stretch.real_knots, at - TOLERANCE)
    if not 0 < above < len(stretch.real_knots):
        return 0.0
    real, nominal = (knots[above] - knots[above - 1] for knots in (stretch.real_knots, stretch.nominal_knots))
    return grid.change(real, round(nominal / grid.step))


def _needed(at: float, grid: Grid1, stretch: Stretch) -> float:
    knots = [*stretch.real_knots, at]
    return max(
        (grid.least_change(high - low) for low, high in pairwise(sorted(knots)) if at in (low, high)), default=0.0
    )
