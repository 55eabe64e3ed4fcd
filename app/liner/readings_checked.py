"""Readings that cannot be: refused with what was found and what was expected, before any verdict."""

from math import isfinite

from app.brickwork.layout import Layout
from app.liner.drift_words import Units
from app.liner.mould import mould
from app.liner.readings_values import Reading
from app.liner.values import Checkpoint, Drift
from app.panel.faults import Fault, Refused
from app.panel.project import Liner
from app.panel.temperatures import LIMITS
from app.panel.tolerance import TOLERANCE

MISREAD = 1.0
"""Inches off its own checkpoint from which a value that would be right at another is taken for that one's (common
practice)."""

OVER = 1.0
"""Inches by which a tape may show more than the panel: 40 ft of liner grow 0.864 in. over 40 F."""

EXTENTS = {"x": "width", "y": "height"}
WAYS = {"x": "along", "y": "up"}


def checked(
    reading: Reading,
    layout: Layout,
    liner: Liner,
    drift: Drift,
    length_unit: str = "in",
    temperature_unit: str = "F",
) -> Checkpoint:
    """The checkpoint that was read; raises Refused with every fault: a mark that is not there, a temperature no bed
    has, a value below zero, past the panel, right at another checkpoint, or more than one sheet from its own."""
    faults = _temperature_faults(reading, temperature_unit)
    point = next((point for point in drift.checkpoints if point.mark == reading.mark), None)
    if point is None:
        raise Refused([_unknown(reading, drift, length_unit), *faults])
    faults += _value_faults(reading, point, layout, liner, drift, length_unit)
    if faults:
        raise Refused(faults)
    return point


def _temperature_faults(reading: Reading, unit: str) -> list[Fault]:
    low, high = LIMITS[unit]
    taken = (("bed temperature", reading.bed_temperature), ("tape temperature", reading.tape_temperature))
    return [
        Fault(name, f"{value:g} °{unit}", f"{low} to {high} °{unit}")
        for name, value in taken
        if value is not None and not low <= value <= high
    ]


def _unknown(reading: Reading, drift: Drift, unit: str) -> Fault:
    """The fault of a mark that is not there, naming the nearest one that is."""
    if not drift.checkpoints:
        return Fault("checkpoint", reading.mark or "nothing", "no reading: this panel has no brick and no checkpoints")
    ends = [_ends([point.mark for point in drift.checkpoints if point.axis == axis]) for axis in EXTENTS]
    nearest = _nearest_mark(reading, drift)
    where = f"; nearest is {nearest.mark} at {Units(unit).said(nearest.nominal)}"
    return Fault("checkpoint", reading.mark or "nothing", f"one of {' or '.join(filter(None, ends))}{where}")


def _ends(marks: list[str]) -> str:
    return f"{marks[0]} to {marks[-1]}" if len(marks) > 1 else "".join(marks)


def _nearest_mark(reading: Reading, drift: Drift) -> Checkpoint:
    """On the axis that the mark's letter names, by its number; else by what was read."""
    letter, number = reading.mark[:1].lower(), reading.mark[1:]
    own = [point for point in drift.checkpoints if point.axis == letter]
    if own and number.isdecimal():
        return own[min(max(int(number[:9]), 1), len(own)) - 1]
    return _nearest(own or list(drift.checkpoints), reading.value)


def _nearest(points: list[Checkpoint], value: float) -> Checkpoint:
    return min(points, key=lambda point: abs(point.nominal - value))


def _value_faults(
    reading: Reading, point: Checkpoint, layout: Layout, liner: Liner, drift: Drift, unit: str
) -> list[Fault]:
    """At most one fault, the plainest."""
    reach = layout.panel.width if point.axis == "x" else layout.panel.height
    found = "no number"
    if isfinite(reading.value):
        found = f"{Units(unit).said(reading.value)} {WAYS[point.axis]} the panel"
    if not 0 <= reading.value <= reach + OVER:
        return [Fault("reading", found, f"0 to {Units(unit).said(reach)}, the panel's {EXTENTS[point.axis]}")]
    sheet = mould(layout.bond, layout.size, liner.columns, liner.rows).size[0 if point.axis == "x" else 1]
    off = abs(reading.value - point.nominal)
    other = _nearest([each for each in drift.checkpoints if each.axis == point.axis], reading.value)
    if off > MISREAD and abs(reading.value - other.nominal) <= other.band + TOLERANCE:
        asked = f"; did you read {other.mark}? It is at {Units(unit).said(other.nominal)}"
        return [Fault("reading", found, f"{point.mark} at {Units(unit).said(point.nominal)}{asked}")]
    if off <= sheet:
        return []
    asked = f"; did you read another checkpoint? {other.mark} is at {Units(unit).said(other.nominal)}"
    expected = f"{point.mark} at {Units(unit).said(point.nominal)}, within one sheet of {Units(unit).said(sheet)}"
    return [Fault("reading", found, expected + (asked if other != point else ""))]
