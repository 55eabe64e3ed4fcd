"""Drift: how far liner that is held along some lines grows or shrinks, and where the tape shows it."""

from bisect import bisect_right
from collections.abc import Iterator
from math import ceil, floor

import numpy as np

from app.brickwork.findings import Finding
from app.brickwork.lattice import Floats
from app.brickwork.layout import Layout
from app.lengths import format_length
from app.liner.lines import Line, control_lines, held_lines
from app.liner.mould import mould
from app.liner.tape import Tape, joint_lines, tapes
from app.liner.values import Checkpoint, Drift
from app.panel.project import Day, Liner
from app.panel.tolerance import TOLERANCE


def growth(length: float, expansion_per_degree: float, degrees: float) -> float:
    """Free growth of a length over a rise in temperature, in the unit of the length; negative for a fall."""
    return length * expansion_per_degree * degrees


def expected_at(checkpoint: Checkpoint, temperature: float) -> float:
    """The reading in inches at this bed temperature if nothing is corrected."""
    return checkpoint.nominal + checkpoint.grows_per_degree * (temperature - checkpoint.reference_temperature)


def drift(
    layout: Layout,
    liner: Liner,
    day: Day,
    temperature_unit: str = "F",
    corner: str | None = None,
    length_unit: str = "in",
) -> Drift:
    """Checkpoints along both axes for the day's range of bed temperature, and how far one sheet can drift.

    Temperatures are in the project's unit, "F" or "C", and the liner's expansion is per degree of it; the units given
    here only go into words. No checkpoints for an empty brick field. Raises KeyError for an unknown bond.
    """
    corner = layout.panel.laying.corner if corner is None else corner
    worst = max((day.bed_low, day.bed_high), key=lambda bed: abs(bed - liner.reference_temperature))
    span = _over(liner.tolerance.inches, abs(growth(1.0, liner.expansion_per_degree, _rise(liner, worst))))
    points: tuple[Checkpoint, ...] = ()
    if not layout.field.is_empty:
        points = tuple(
            point for tape in tapes(layout, corner) for point in _checkpoints(layout, tape, liner, day, span)
        )
    degrees = _over(liner.tolerance.inches, abs(growth(_longest_sheet(layout, liner), liner.expansion_per_degree, 1.0)))
    window = None
    if degrees is not None:
        window = (liner.reference_temperature - degrees, liner.reference_temperature + degrees)
    found = tuple(_sheet_findings(layout, liner, day, window, (temperature_unit, length_unit), corner))
    return Drift(span, worst, points, window, found)


def _rise(liner: Liner, temperature: float) -> float:
    return temperature - liner.reference_temperature


def _over(amount: float, rate: float) -> float | None:
    return amount / rate if rate > 0 else None


def _longest_sheet(layout: Layout, liner: Liner) -> float:
    sizes = [mould(region.bond, region.size, liner.columns, liner.rows).size for region in layout.regions]
    return max((max(size) for size in sizes), default=0.0)


def _checkpoints(layout: Layout, tape: Tape, liner: Liner, day: Day, span: float | None) -> Iterator[Checkpoint]:
    most = tape.reach if span is None else _whole_modules(span, tape.module)
    placed = _placed(control_lines(layout, tape), joint_lines(layout, tape, liner), most)
    held = held_lines(layout, tape, liner)
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
        )


def _whole_modules(span: float, module: float) -> float:
    """The span rounded down to whole modules, but at least one: liner cannot be read between joint lines."""
    return max(1, floor(span / module + TOLERANCE)) * module


def _placed(controls: list[Line], joints: Floats, most: float) -> Iterator[Line]:
    """Every control line, and between them as few joint lines as keep all gaps within `most`.

    Where no joint line is within `most` (a span under one module) the next one is taken.
    """
    last = 0.0
    for control, name in controls:
        while control - last > most + TOLERANCE:
            after = int(np.searchsorted(joints, last + TOLERANCE, side="right"))
            within = int(np.searchsorted(joints, last + most + TOLERANCE, side="right")) - 1
            line = max(after, within)
            if line >= len(joints) or joints[line] > control - TOLERANCE:
                break
            last = float(joints[line])
            yield last, ""
        yield control, name
        last = control


def _sheet_findings(
    layout: Layout,
    liner: Liner,
    day: Day,
    window: tuple[float, float] | None,
    units: tuple[str, str],
    corner: str,
) -> Iterator[Finding]:
    """A finding if one sheet alone drifts past the tolerance, with the temperatures at which it may be laid."""
    if window is None or (window[0] <= day.bed_low and day.bed_high <= window[1]):
        return
    (degree, unit), length = units, _longest_sheet(layout, liner)
    worst = max((day.bed_low, day.bed_high), key=lambda bed: abs(_rise(liner, bed)))
    moved = growth(length, liner.expansion_per_degree, _rise(liner, worst))
    text = (
        f"One sheet of {format_length(length, unit)} {'grows' if moved > 0 else 'shrinks'}"
        f" {format_length(abs(moved), unit, 64)} at {worst:g} °{degree}, past the tolerance of"
        f" {format_length(liner.tolerance, unit, 64)}. Lay it only while the bed is between {ceil(window[0])} and"
        f" {floor(window[1])} °{degree}."
    )
    x = layout.panel.width if corner.endswith("left") else 0.0
    y = layout.panel.height if "upper" in corner else 0.0
    yield Finding("liner-sheet-drift", "warning", x, y, text)
