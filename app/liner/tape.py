"""The tape along one axis: running dimensions from the starting corner, and the joint lines it can be read at."""

from dataclasses import dataclass

import numpy as np

from app.brickwork.bond import Bond
from app.brickwork.lattice import Floats, lattice
from app.brickwork.layout import Layout
from app.liner.mould import pitches
from app.liner.places import starts
from app.panel.project import Liner
from app.panel.tolerance import TOLERANCE

STEEL_PER_F = 6.45e-6
"""Growth of a steel tape per degree F: surveying forum, *Steel Taping Puzzle*, printed example."""
STEEL_STANDARD_F = 68.0
"""A steel tape is right at 68 F (20 C): same source."""

_DIGITS = 6


@dataclass(frozen=True, slots=True)
class Tape:
    """A tape along "x" or "y" with its hook on the panel's edge at the starting corner; `reach` is to the far edge.

    `low` and `high` bound the brick field in the face frame, inches; `module` is one head module or one gauge.
    """

    axis: str
    reach: float
    is_turned: bool
    low: float
    high: float
    module: float

    def running(self, position: float) -> float:
        """Running dimension of a position in the face frame, or the other way round; inches."""
        return self.reach - position if self.is_turned else position


def tapes(layout: Layout, corner: str) -> tuple[Tape, Tape]:
    """The tapes along x and y of a panel with a brick field; inches."""
    x0, y0, x1, y1 = layout.field.bounds
    right, up = starts(corner)
    return (
        Tape("x", layout.panel.width, right < 0, x0, x1, layout.size.head_module),
        Tape("y", layout.panel.height, up < 0, y0, y1, layout.size.gauge),
    )


def joint_lines(layout: Layout, tape: Tape, liner: Liner) -> Floats:
    """Running dimensions of the field's joint lines along one axis, rising; inches.

    Along x the left ends of the units in the bond's first course, along y the bottoms of all courses. A bond without
    level courses has no such lines: then every place where the pattern comes back under the tape.
    """
    bond, axis = layout.bond, 0 if tape.axis == "x" else 1
    starts_at, step = _repeat(layout, bond, axis, liner)
    origin = layout.origin[axis]
    stretch = layout.lines.up if axis else layout.lines.across
    first = np.floor((stretch.nominal(tape.low) - origin) / step) - 1
    last = np.ceil((stretch.nominal(tape.high) - origin) / step) + 1
    lines = stretch.real(origin + (np.arange(first, last + 1)[:, None] * step + starts_at).ravel())
    lines = lines[(lines > tape.low - TOLERANCE) & (lines < tape.high + TOLERANCE)]
    return _distinct(tape.reach - lines if tape.is_turned else lines)


def _distinct(lines: Floats) -> Floats:
    """The lines in rising order, each place once, as exact as they came."""
    at: Floats = lines[np.unique(np.round(lines, _DIGITS), return_index=True)[1]]
    return at


def _repeat(layout: Layout, bond: Bond, axis: int, liner: Liner) -> tuple[Floats, float]:
    """Starts of the joint lines within one repeat along the axis, and its length."""
    lat = lattice(bond, layout.size, (0.0, 0.0))
    if bond.turn or not lat.is_level:
        return np.zeros(1), pitches(bond, layout.size, liner.columns * layout.size.head_module)[axis]
    if axis:
        return _distinct(lat.y), lat.up[1]
    return _distinct(lat.x[lat.y == lat.y.min()]), lat.across[0]


def steel_tape_correction(length: float, tape_temperature: float) -> float:
    """True length of what a steel tape at `tape_temperature` degrees F reads as `length`, in the same unit.

    304.8082 m read at 42 F are 304.757 m: surveying forum, *Steel Taping Puzzle*, printed example.
    """
    return length * (1 + STEEL_PER_F * (tape_temperature - STEEL_STANDARD_F))


def steel_tape_reading(length: float, tape_temperature: float) -> float:
    """What a steel tape at `tape_temperature` degrees F reads along a true `length`, in the same unit.

    The other way round of `steel_tape_correction`: the marks of a hot tape stand too far apart, so it reads short.
    """
    return length / (1 + STEEL_PER_F * (tape_temperature - STEEL_STANDARD_F))


def fahrenheit(temperature: float, unit: str) -> float:
    """A temperature in the project's unit, "F" or "C", in degrees F."""
    return temperature * 1.8 + 32 if unit == "C" else temperature
