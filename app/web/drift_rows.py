"""Tables of the Drift screen as words: checkpoints, laying windows, fixing lines, the tape."""

from collections.abc import Iterator
from dataclasses import dataclass

from app.drawing.lettering import lettered, lettered_miss, with_fractions
from app.liner.drift import expected_at
from app.liner.drift_words import (
    Units,
    advice_words,
    effect_words,
    line_words,
    point_window_words,
    span_name,
    window_words,
)
from app.liner.fixing_advice import FixingAdvice, SpanAdvice
from app.liner.tape import fahrenheit, steel_tape_reading
from app.liner.tape_table import TapeReading, TapeTable, tape_tables
from app.liner.values import Checkpoint
from app.panel.tolerance import TOLERANCE
from app.web.drift_asked import Asked
from app.workflow.compute import Computed


@dataclass(frozen=True, slots=True)
class PointRow:
    """One checkpoint; `is_right` goes with the verdict's words."""

    axis: str
    mark: str
    where: str
    held_by: str
    nominal: str
    reading: str
    is_right: bool
    verdict: str
    window: str


@dataclass(frozen=True, slots=True)
class SpanRow:
    axis: str
    name: str
    words: str


@dataclass(frozen=True, slots=True)
class LineRow:
    """A fixing line with the fields of the edit that adds it."""

    words: str
    effect: str
    values: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class AdviceRow:
    words: str
    lines: tuple[LineRow, ...]


@dataclass(frozen=True, slots=True)
class AxisRow:
    """The advice of one axis; `values` are the fields of the edit that adds all its lines, none for fewer than two."""

    all_lines: str
    count: int
    values: tuple[tuple[str, str], ...]
    spans: tuple[AdviceRow, ...]


@dataclass(frozen=True, slots=True)
class ReadingCells:
    nominal: str
    reading: str


@dataclass(frozen=True, slots=True)
class LineCells:
    """One line of the tape table; `right` is what the tape may show from the hook where laying starts."""

    mark: str
    what: str
    first: ReadingCells
    second: ReadingCells
    right: str


@dataclass(frozen=True, slots=True)
class TableOfTape:
    """Lines without a mark are folded away on the screen; `between` says how many they are, "" for none."""

    axis: str
    name: str
    ends: tuple[str, str]
    hook: str
    rows: tuple[LineCells, ...]
    between: str


def units_of(computed: Computed) -> Units:
    return Units(computed.unit, computed.given.temperature_unit)


def point_rows(computed: Computed, asked: Asked) -> tuple[PointRow, ...]:
    """All checkpoints in tape order, across first."""
    units, steel = units_of(computed), 1.0
    if asked.tape is not None:
        steel = steel_tape_reading(1.0, fahrenheit(asked.tape, units.temperature))
    return tuple(_point_row(point, asked.bed, steel, units) for point in computed.drift.checkpoints)


def _point_row(point: Checkpoint, bed: float, steel: float, units: Units) -> PointRow:
    expected = expected_at(point, bed)
    grown = expected - point.nominal
    return PointRow(
        axis=point.axis,
        mark=point.mark,
        where=point.control or "joint line",
        held_by=point.held_by,
        nominal=_length(point.nominal, units),
        reading=_length(expected * steel, units),
        is_right=is_right(grown, point.band),
        verdict=verdict(grown, point.band, units),
        window=point_window_words(point.window, units),
    )


def band_words(computed: Computed) -> str:
    """The tolerance of a joint line, either way."""
    return _length(computed.given.liner.tolerance.inches, units_of(computed))


def is_right(grown: float, band: float) -> bool:
    return abs(grown) <= band + TOLERANCE


def verdict(grown: float, band: float, units: Units) -> str:
    """How far a line is off by growth alone, and whether that is within the band."""
    if abs(grown) <= TOLERANCE:
        return "right as drawn"
    by, way = lettered_miss(grown, units.length).removeprefix("≈ "), "long" if grown > 0 else "short"
    if is_right(grown, band):
        return f"{by} {way}, within the band"
    past = lettered_miss(abs(grown) - band, units.length).removeprefix("≈ ")
    return f"{by} {way}, past the band by {past}"


def span_rows(computed: Computed) -> tuple[SpanRow, ...]:
    units, day = units_of(computed), computed.given.day
    return tuple(
        SpanRow(
            "Along" if span.axis == "x" else "Up",
            with_fractions(span_name(span, units)),
            window_words(span.low, span.high, day, units),
        )
        for span in computed.drift.spans
    )


def advice_rows(computed: Computed) -> tuple[AxisRow, ...]:
    """Fixing lines for every span that drifts past the tolerance, axis by axis."""
    units, found = units_of(computed), computed.fixing_advice
    by_axis = [[advice for advice in found if advice.span.axis == axis] for axis in ("x", "y")]
    reference = computed.given.liner.reference_temperature
    return tuple(_axis_row(advices, reference, units) for advices in by_axis if advices)


def _axis_row(advices: list[SpanAdvice], reference: float, units: Units) -> AxisRow:
    lines = [line for advice in advices for line in advice.lines]
    which = "upright lines along" if advices[0].span.axis == "x" else "level lines up"
    all_of_them = (("edit", "add_fixings"), ("lines", " | ".join(line.typed(units.length) for line in lines)))
    return AxisRow(
        all_lines=f"All {len(lines)} {which} the panel, in one step",
        count=len(lines),
        values=all_of_them if len(lines) > 1 else (),
        spans=tuple(
            AdviceRow(
                with_fractions(advice_words(advice, reference, units)),
                tuple(_line_row(line, units) for line in advice.lines),
            )
            for advice in advices
        ),
    )


def _line_row(line: FixingAdvice, units: Units) -> LineRow:
    values = (("edit", "add_fixing"), ("line", line.typed(units.length)))
    return LineRow(with_fractions(line_words(line, units)), with_fractions(effect_words(line, units)), values)


def tape_rows(computed: Computed, asked: Asked) -> tuple[TableOfTape, ...]:
    """The story pole and the tape from both hooks."""
    units = units_of(computed)
    steel = None if asked.tape is None else fahrenheit(asked.tape, units.temperature)
    given = computed.given
    tables = tape_tables(computed.layout, computed.drift, given.liner, asked.bed, steel)
    return tuple(_tape_table(table, units) for table in tables)


def _tape_table(table: TapeTable, units: Units) -> TableOfTape:
    name = "Tape along the panel" if table.axis == "x" else "Story pole up the panel"
    rows = tuple(_line_cells(table, units))
    between = sum(not row.mark for row in rows)
    told = f"Show all joint lines, {between:,} more" if between else ""
    return TableOfTape(table.axis, name, table.ends, table.hook, rows, told)


def _line_cells(table: TapeTable, units: Units) -> Iterator[LineCells]:
    for row in table.rows:
        near = row.first if table.hook == table.ends[0] else row.second
        right = f"{tape_said(near.low, units)}{',' if near.low < 0 else ''} to {tape_said(near.high, units)}"
        yield LineCells(row.mark, row.what, _cells(row.first, units), _cells(row.second, units), right)


def _cells(reading: TapeReading, units: Units) -> ReadingCells:
    return ReadingCells(_length(reading.nominal, units), tape_said(reading.expected, units))


def tape_said(inches: float, units: Units) -> str:
    """What the tape shows; liner that grew past the edge on which it is hooked is measured beyond it."""
    past, nothing = _length(max(-inches, 0.0), units), _length(0.0, units)
    return _length(max(inches, 0.0), units) if past == nothing else f"past the form by {past}"


def _length(inches: float, units: Units) -> str:
    return lettered(inches, units.length).removeprefix("≈ ")
