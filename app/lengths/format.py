"""Lengths as text and as parts: whole ticks first, then split, so that 15.999 in is `1'-4"` and never `1'-3 16/16"`."""

from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache

from app.lengths.error import LengthError
from app.lengths.length import NM_PER_INCH, Length, nearest

DENOMINATORS = (1, 2, 4, 8, 16, 32, 64)
"""The divisions of a tape rule that reads in inches: common practice."""

ON_GRID_NM = 2
"""A length this near to a division is on it: far above the round-off of float inches, far below anything built."""

SMALLEST_MARK = {"in": 1 / 16, "mm": 1 / 25.4}
"""Inches; what a tape is marked in that reads in inches or in millimetres: common practice."""

OFF_GRID = "≈ "


@dataclass(frozen=True, slots=True)
class LengthParts:
    """A length split for lettering: `sign` is -1 or 1 (1 for zero), `inches` is below 12, the fraction is reduced
    (0 over 1 when there is none), `exact` is False when the length is off the grid and these parts are the nearest."""

    sign: int
    feet: int
    inches: int
    numerator: int
    denominator: int
    exact: bool


def parts(length: Length | float, denominator: int = 16) -> LengthParts:
    """Split a length (or a number of inches) to the nearest 1/`denominator` in, ties away from zero; raises
    LengthError for a number that is no length, or a denominator that is not 1, 2, 4, 8, 16, 32 or 64."""
    ticks, is_exact = _ticks(length, denominator)
    whole, rest = divmod(abs(ticks), denominator)
    feet, inches = divmod(whole, 12)
    fraction = Fraction(rest, denominator)
    return LengthParts(-1 if ticks < 0 else 1, feet, inches, fraction.numerator, fraction.denominator, is_exact)


@lru_cache(maxsize=16_384)
def format_length(length: Length | float, unit: str = "in", denominator: int = 16) -> str:
    """Text of a length (or of a number of inches): unit "in" gives feet and inches to the nearest 1/`denominator` in,
    "mm" whole millimetres, ties away from zero; raises LengthError as `parts` does, and for another unit.

    A length more than 2 nm off that grid is marked `≈ `; marked text is for reading only, and `parse` refuses it, so
    that a rounded label cannot come back as if it were exact.
    """
    if unit == "mm":
        return _millimetres(length)
    if unit != "in":
        raise LengthError(unit, 0, unit, "a unit to write lengths in: in or mm", "in")
    split = parts(length, denominator)
    mark = "" if split.exact else OFF_GRID
    return f"{mark}{'-' if split.sign < 0 else ''}{_feet_and_inches(split)}"


def _feet_and_inches(split: LengthParts) -> str:
    fraction = f"{split.numerator}/{split.denominator}" if split.numerator else ""
    if split.feet:
        inches = f"{split.inches} {fraction}".rstrip()
        return f"{split.feet}'-{inches}\""
    if not fraction:
        return f'{split.inches}"'
    return f'{split.inches} {fraction}"' if split.inches else f'{fraction}"'


def _millimetres(length: Length | float) -> str:
    nm = _nm(length)
    whole = nearest(Fraction(nm, 1_000_000))
    is_exact = abs(nm - whole * 1_000_000) <= ON_GRID_NM
    return f"{'' if is_exact else OFF_GRID}{whole} mm"


def _ticks(length: Length | float, denominator: int) -> tuple[int, bool]:
    if denominator not in DENOMINATORS:
        raise LengthError(str(denominator), 0, str(denominator), "a denominator of 1, 2, 4, 8, 16, 32 or 64", "16")
    nm = _nm(length)
    ticks = nearest(Fraction(nm * denominator, NM_PER_INCH))
    off = abs(nm * denominator - ticks * NM_PER_INCH)
    return ticks, off <= ON_GRID_NM * denominator


def _nm(length: Length | float) -> int:
    return length.nm if isinstance(length, Length) else Length.from_inches(length).nm
