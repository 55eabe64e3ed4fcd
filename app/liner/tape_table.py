"""The story pole and the tape as a table: every course and head joint, from both ends of the bed. See `tape_tables`."""

from dataclasses import dataclass

import numpy as np

from app.brickwork.layout import Layout
from app.liner.growth import free_lengths, growth
from app.liner.lines import Line, held_lines
from app.liner.tape import Tape, joint_lines, steel_tape_reading, tapes
from app.liner.values import Drift
from app.panel.project import Liner
from app.panel.tolerance import TOLERANCE

ENDS = {"x": ("left", "right"), "y": ("foot", "top")}
"""Where a tape can be hooked on the bed, as seen from the panel's foot with its back up."""


@dataclass(frozen=True, slots=True)
class TapeReading:
    """One line from one hook, inches: its true `nominal`, and what the tape shows there.

    `expected` is the reading at the bed temperature if nothing is corrected; readings from `low` to `high` are right.
    """

    nominal: float
    expected: float
    low: float
    high: float


@dataclass(frozen=True, slots=True)
class TapeRow:
    """One line across the tape: its checkpoint's mark or "", what stands there, the readings from both hooks.

    `position` is in the face frame, inches; `is_within` says whether the liner there is right without correction.
    """

    mark: str
    what: str
    position: float
    first: TapeReading
    second: TapeReading
    is_within: bool


@dataclass(frozen=True, slots=True)
class TapeTable:
    """The lines along one axis from the starting corner on; `ends` name the hooks of `first` and `second`.

    `hook` is the end where laying starts: there nothing has grown.
    """

    axis: str
    hook: str
    ends: tuple[str, str]
    rows: tuple[TapeRow, ...]


def tape_tables(
    layout: Layout, drift: Drift, liner: Liner, temperature: float, tape_fahrenheit: float | None = None
) -> tuple[TapeTable, ...]:
    """Head joints and checkpoints along x, then courses and checkpoints up y, at one bed temperature.

    Head joints are those of the bond's first course. `temperature` is in the project's unit, the steel tape's always
    in degrees F; without one the tape is taken to be right. No tables for an empty brick field.
    """
    if layout.field.is_empty:
        return ()
    degrees = temperature - liner.reference_temperature
    return tuple(
        _table(layout, drift, liner, tape, degrees, tape_fahrenheit)
        for tape in tapes(layout, layout.panel.laying.corner)
    )


def _table(
    layout: Layout, drift: Drift, liner: Liner, tape: Tape, degrees: float, tape_fahrenheit: float | None
) -> TapeTable:
    lines = _lines(layout, drift, liner, tape)
    at = np.array([line for line, _, _ in lines])
    free = free_lengths(held_lines(layout, tape, liner), at)
    grown = growth(1.0, liner.expansion_per_degree, degrees) * free
    steel = 1.0 if tape_fahrenheit is None else steel_tape_reading(1.0, tape_fahrenheit)
    band = liner.tolerance.inches
    rows = tuple(_row(tape, line, by, band, steel) for line, by in zip(lines, grown.tolist(), strict=True))
    ends = ENDS[tape.axis]
    return TapeTable(tape.axis, ends[_hooks_second(tape)], ends, rows)


def _hooks_second(tape: Tape) -> bool:
    """Whether laying starts at the bed's right or at the top: the bed's x runs against the face's."""
    return not tape.is_turned if tape.axis == "x" else tape.is_turned


def _row(tape: Tape, line: tuple[float, str, str], grown: float, band: float, steel: float) -> TapeRow:
    nominal, mark, what = line
    near = _reading(nominal, grown, band, steel)
    far = _reading(tape.reach - nominal, -grown, band, steel)
    first, second = (far, near) if _hooks_second(tape) else (near, far)
    return TapeRow(mark, what, tape.running(nominal), first, second, abs(grown) <= band + TOLERANCE)


def _reading(nominal: float, grown: float, band: float, steel: float) -> TapeReading:
    low = max(0.0, nominal - band)
    return TapeReading(nominal, (nominal + grown) * steel, low * steel, (nominal + band) * steel)


def _lines(layout: Layout, drift: Drift, liner: Liner, tape: Tape) -> list[tuple[float, str, str]]:
    """Running dimension, checkpoint's mark and what stands there, rising; lines at one place are one."""
    own = [point for point in drift.checkpoints if point.axis == tape.axis]
    lines = [(point.nominal, point.mark, point.control) for point in own]
    known = np.array([point.nominal for point in own])
    courses = _course_names(layout, tape)
    for joint in joint_lines(layout, tape, liner).tolist():
        course = _named(courses, joint)
        same = np.flatnonzero(np.abs(known - joint) <= TOLERANCE)
        if len(same):
            nominal, mark, control = lines[same[0]]
            lines[same[0]] = (nominal, mark, ", ".join(filter(None, (control, course))) or _plain(tape))
        else:
            lines.append((joint, "", course or _plain(tape)))
    return sorted(lines)


def _plain(tape: Tape) -> str:
    return "head joint" if tape.axis == "x" else "joint line"


def _course_names(layout: Layout, tape: Tape) -> list[Line]:
    """Foot of each course of the field as the tape up the panel reads it; none for the tape along x."""
    if tape.axis == "x":
        return []
    return sorted((tape.running(course.bottom), f"course {course.course}") for course in layout.courses)


def _named(names: list[Line], at: float) -> str:
    return next((name for line, name in names if abs(line - at) <= TOLERANCE), "")
