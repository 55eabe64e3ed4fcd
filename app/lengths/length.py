"""A length as a person typed it, exact to the nanometre."""

import math
from dataclasses import dataclass, field
from fractions import Fraction
from numbers import Integral, Real
from typing import Literal

from app.lengths.error import LengthError

NM_PER_INCH = 25_400_000
"""Nanometres in an inch: exactly 25.4 mm by the international yard and pound agreement of 1959."""

Unit = Literal["in", "ft", "mm", "cm", "m"]

NM_PER_UNIT: dict[str, int] = {
    "in": NM_PER_INCH,
    "ft": 12 * NM_PER_INCH,
    "mm": 1_000_000,
    "cm": 10_000_000,
    "m": 1_000_000_000,
}

LONGEST_FEET = 10_000
"""Longer than any wall; keeps a slip of the keyboard from becoming a number that no float holds."""


@dataclass(frozen=True, slots=True)
class Length:
    """A length in whole nanometres; `typed` is what the person typed and takes no part in equality."""

    nm: int
    typed: str | int | float | None = field(default=None, compare=False)

    @property
    def inches(self) -> float:
        """Inches; every 1/64 in is exact."""
        return self.nm / NM_PER_INCH

    @property
    def millimetres(self) -> float:
        """Millimetres; every whole and half millimetre is exact."""
        return self.nm / 1_000_000

    @classmethod
    def from_inches(cls, value: float, typed: str | int | float | None = None) -> "Length":
        """The length nearest to a number of inches, ties away from zero; raises LengthError for NaN, infinite, bool,
        and beyond 10,000 ft."""
        return cls(nanometres(exact_number(value), "in", str(value)), typed)

    @classmethod
    def from_number(cls, value: int | float, unit: Unit) -> "Length":
        """The length nearest to a number of `unit` as written in decimals, kept as typed; raises LengthError for NaN,
        infinite, bool, an unknown unit, and beyond 10,000 ft."""
        return cls(nanometres(exact_number(value), unit, str(value)), value)


def exact_number(value: int | float) -> Fraction:
    """The decimal number that a person sees: 0.1 is one tenth, not the float next to it."""
    if isinstance(value, bool) or not isinstance(value, Real):
        raise LengthError(str(value), 0, f"{type(value).__name__} {value}", "a number", "12.5")
    if isinstance(value, Integral):
        return Fraction(int(value))
    if not math.isfinite(value):
        raise LengthError(str(value), 0, str(value), "a finite number", "12.5")
    return Fraction(repr(float(value)))


def nanometres(number: Fraction, unit: str, text: str) -> int:
    """`number` of `unit` in whole nanometres, ties away from zero; `text` is what an error shows."""
    if unit not in NM_PER_UNIT:
        raise LengthError(unit, 0, unit, "a unit: in, ft, mm, cm or m", "in")
    nm = nearest(number * NM_PER_UNIT[unit])
    if abs(nm) > LONGEST_FEET * NM_PER_UNIT["ft"]:
        raise LengthError(text, 0, text, f"a length of at most {LONGEST_FEET:,} ft", "120'-0\"")
    return nm


def nearest(value: Fraction) -> int:
    """The nearest whole number, ties away from zero."""
    whole = (2 * abs(value.numerator) + value.denominator) // (2 * value.denominator)
    return -whole if value < 0 else whole
