"""Tables of a submittal as rows of words: trimmed pieces, checkpoints."""

from collections import Counter
from collections.abc import Iterable
from math import floor
from typing import NamedTuple

from app.brickwork.bond import KINDS
from app.brickwork.cuts import CUTS
from app.brickwork.layout import Layout
from app.drawing.lettering import lettered, with_fractions
from app.drawing.styles import CUT_LETTERS
from app.lengths import SMALLEST_MARK, format_length
from app.liner.values import Drift
from app.panel.project import Project

TICK = SMALLEST_MARK
"""Sizes in schedules are to the tape's smallest mark."""

Row = dict[str, str | bool]

_READING_WORDS = {"in": "1/32 in.", "mm": "millimetre"}


class _Piece(NamedTuple):
    """What makes two trimmed pieces one row; sizes in ticks, negative so that the longest comes first."""

    kind: int
    cut: int
    length: int
    height: int
    is_small: bool


def trim_rows(layout: Layout, unit: str) -> list[Row]:
    """Trimmed pieces grouped by kind, cut class and size to the tick, with counts that add up to the layout's.

    Lengths in words in `unit`, "in" or "mm"; no row for a face without trimmed pieces.
    """
    tick = TICK[unit]
    counted = Counter(_pieces(layout, tick))
    return [_trim_row(piece, counted[piece], unit) for piece in sorted(counted)]


def _pieces(layout: Layout, tick: float) -> Iterable[_Piece]:
    kinds = layout.units.kind.tolist()
    for unit, cut, length, height, is_small, _ in layout.trim_rows():
        yield _Piece(kinds[unit], CUTS.index(cut), -_nearest(length / tick), -_nearest(height / tick), is_small)


def _trim_row(piece: _Piece, count: int, unit: str) -> Row:
    cut, tick = CUTS[piece.cut], TICK[unit]
    return {
        "kind": f"{KINDS[piece.kind]}, {CUT_LETTERS[cut]} {cut}",
        "size": f"{lettered(-piece.length * tick, unit)} x {lettered(-piece.height * tick, unit)}",
        "count": f"{count:,}",
        "small": piece.is_small,
    }


def about_words(inches: float, unit: str) -> str:
    """To the nearest tick, without the sign for a rounded length: a place to look at, not one to cut by."""
    return lettered(_nearest(inches / TICK[unit]) * TICK[unit], unit)


def _nearest(value: float) -> int:
    """The nearest whole number, halves up."""
    return floor(value + 0.5)


def checkpoint_rows(drift: Drift, unit: str) -> list[Row]:
    """Checkpoints of the tape, in their order; no row for a panel that needs none."""
    return [
        {
            "mark": f"{point.mark}, {point.axis}",
            "control": point.control,
            "nominal": about_words(point.nominal, unit),
            "expected": f"{reading_words(point.expected_low, unit)} to {reading_words(point.expected_high, unit)}",
            "band": f"± {reading_words(point.band, unit)}",
        }
        for point in drift.checkpoints
    ]


def drift_words(drift: Drift, project: Project) -> str:
    """How the checkpoints are to be read: from where, at which temperatures, and when a whole sheet may be laid."""
    day, degrees, unit = project.day, f"degrees {project.temperature_unit}", project.length_unit
    words = (
        f"Tape hooked at the panel's edge at the starting corner; reading at {day.bed_low:g} and {day.bed_high:g}"
        f" {degrees} if nothing is corrected, to the nearest {_READING_WORDS[unit]}; right within the band."
    )
    if drift.window is None:
        return words
    low, high = drift.window
    return f"{words} A whole sheet stays within its tolerance from {low:.0f} to {high:.0f} {degrees}."


def reading_words(inches: float, unit: str) -> str:
    """To the nearest 1/32 in., the finest that a tape is read to (common practice), or whole millimetre."""
    tick = TICK[unit] / 2 if unit == "in" else TICK[unit]
    return with_fractions(format_length(_nearest(inches / tick) * tick, unit, 32))
