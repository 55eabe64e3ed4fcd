"""Drift: how far liner that is held along some lines grows or shrinks, and where the tape shows it."""

from bisect import bisect_right
from collections.abc import Iterable, Iterator
from functools import lru_cache
from itertools import pairwise
from math import ceil, floor, isinf

import numpy as np

from app.brickwork.bond import Bond
from app.brickwork.findings import Finding
from app.brickwork.layout import Layout
from app.brickwork.turning import turned_points
from app.lengths import format_length
from app.liner.growth import free_span, growth, worst_temperature
from app.liner.halving import read_lines
from app.liner.lines import Line, control_lines, held_lines
from app.liner.mould import mould
from app.liner.places import starts
from app.liner.square_lines import askew_findings
from app.liner.tape import Tape, joint_lines, tapes
from app.liner.values import Checkpoint, Drift, LayingWindow
from app.panel.project import Day, Liner
from app.panel.size import BrickSize
from app.panel.tolerance import TOLERANCE


def expected_at(checkpoint: Checkpoint, temperature: float) -> float:
    """The reading in inches at this bed temperature if nothing is corrected."""
    return checkpoint.nominal + checkpoint.grows_per_degree * (temperature - checkpoint.reference_temperature)


def drift(layout: Layout, liner: Liner, day: Day, temperature_unit: str = "F", *, length_unit: str = "in") -> Drift:
    """Checkpoints along both axes for the day's range of bed temperature, and how far one sheet can drift.

    Running dimensions start at the panel's edges at its starting corner (`panel.laying.corner`). Temperatures are in
    the project's unit, "F" or "C", and the liner's expansion is per degree of it; the units given here only go into
    words. No checkpoints for an empty brick field. Raises KeyError for an unknown bond.
    """
    worst = worst_temperature(day, liner)
    span = free_span(liner, worst)
    points: list[Checkpoint] = []
    spans: list[LayingWindow] = []
    askew: Iterable[Finding] = ()
    if not layout.field.is_empty:
        both = tapes(layout, layout.panel.laying.corner)
        askew = askew_findings(layout.panel, both)
        for tape in both:
            held = held_lines(layout, tape, liner)
            points += _checkpoints(layout, tape, held, liner, day, span)
            spans += _spans(tape, held, liner)
    longest = longest_sheet(layout, liner)
    degrees = _degrees(liner, longest)
    window = None if degrees is None else _about(liner, degrees)
    found = (*_sheet_findings(layout, liner, day, longest, (temperature_unit, length_unit)), *askew)
    return Drift(None if isinf(span) else span, worst, tuple(points), window, found, tuple(spans))


def _rise(liner: Liner, temperature: float) -> float:
    return temperature - liner.reference_temperature


def _degrees(liner: Liner, length: float) -> float | None:
    """Degrees over which free growth of a length uses up the tolerance; None where it never does."""
    each = abs(growth(length, liner.expansion_per_degree, 1.0))
    return liner.tolerance.inches / each if each > 0 else None


def _about(liner: Liner, degrees: float) -> tuple[float, float]:
    return liner.reference_temperature - degrees, liner.reference_temperature + degrees


def longest_sheet(layout: Layout, liner: Liner) -> float:
    """The longest that a sheet can be on this panel, along or up, teeth and all: as its mould makes it, but no longer
    than the brick of its region. Inches; 0 without brick."""
    field, longest = layout.field.bounds, 0.0
    for zone in np.flatnonzero(np.bincount(layout.units.zone)).tolist():
        region = layout.regions[zone]
        made, brick = _made(region.bond, region.size, liner.columns, liner.rows), region.extent.bounds
        for k in (0, 1):
            room = min(brick[k + 2], field[k + 2]) - max(brick[k], field[k])
            longest = max(longest, min(made[k], room))
    return longest


@lru_cache(maxsize=256)
def _made(bond: Bond, size: BrickSize, columns: int, rows: int) -> tuple[float, float]:
    """Width and height of a whole sheet as it lies on the face, teeth and all, inches."""
    shape = mould(bond, size, columns, rows)
    width, height = np.ptp(turned_points(shape.outline, shape.turn), axis=0).tolist()
    return width, height


def _spans(tape: Tape, held: list[Line], liner: Liner) -> Iterator[LayingWindow]:
    """The spans of one tape, each from a line that holds the liner to the next or to the far edge."""
    for (start, held_by), (end, ended_by) in pairwise([*held, (tape.reach, "far edge")]):
        degrees = _degrees(liner, end - start)
        low, high = (None, None) if degrees is None else _about(liner, degrees)
        yield LayingWindow(tape.axis, start, end, held_by, low, high, ended_by)


def _checkpoints(
    layout: Layout, tape: Tape, held: list[Line], liner: Liner, day: Day, span: float
) -> Iterator[Checkpoint]:
    placed = read_lines(_fixed(control_lines(layout, tape), held), joint_lines(layout, tape, liner), span, tape.module)
    for k, (nominal, control) in enumerate(placed, start=1):
        held_from, held_by = held[bisect_right(held, nominal + TOLERANCE, key=lambda line: line[0]) - 1]
        rate = growth(max(0.0, nominal - held_from), liner.expansion_per_degree, 1.0)
        yield Checkpoint(
            mark=f"{tape.axis.upper()}{k}",
            axis=tape.axis,
            nominal=nominal,
            position=tape.running(nominal),
            held_from=held_from,
            held_by=held_by,
            expected_low=nominal + rate * _rise(liner, day.bed_low),
            expected_high=nominal + rate * _rise(liner, day.bed_high),
            band=liner.tolerance.inches,
            control=control,
            grows_per_degree=rate,
            reference_temperature=liner.reference_temperature,
            bed_low=day.bed_low,
            bed_high=day.bed_high,
        )


def _fixed(controls: list[Line], held: list[Line]) -> list[Line]:
    """Lines read at any temperature, rising: the control lines, and lines that hold the liner where no control is."""
    at = [line for line, _ in controls]
    more = [line for line in held[1:] if all(abs(line[0] - known) > TOLERANCE for known in at)]
    return sorted(controls + more)


def _sheet_findings(
    layout: Layout,
    liner: Liner,
    day: Day,
    length: float,
    units: tuple[str, str],
) -> Iterator[Finding]:
    """A finding if one sheet alone drifts past the tolerance, with the temperatures at which it may be laid."""
    degrees = _degrees(liner, length)
    window = None if degrees is None else _about(liner, degrees)
    if window is None or (window[0] <= day.bed_low and day.bed_high <= window[1]):
        return
    degree, unit = units
    worst = worst_temperature(day, liner)
    moved = growth(length, liner.expansion_per_degree, _rise(liner, worst))
    text = (
        f"One sheet of {format_length(length, unit)} {'grows' if moved > 0 else 'shrinks'}"
        f" {format_length(abs(moved), unit, 64)} at {worst:g} °{degree}, past the tolerance of"
        f" {format_length(liner.tolerance, unit, 64)}. Lay it only while the bed is between {ceil(window[0])} and"
        f" {floor(window[1])} °{degree}."
    )
    right, up = starts(layout.panel.laying.corner)
    x, y = 0.0 if right > 0 else layout.panel.width, 0.0 if up > 0 else layout.panel.height
    yield Finding("liner-sheet-drift", "warning", x, y, text)
