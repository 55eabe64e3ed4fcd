"""Inches of the engine as numbers of a file's unit."""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

PLACES = 9
"""Decimals that are written: far below any tolerance, and round-off of floats does not show."""

AREA_PLACES = 6
"""The same for areas, which in square millimetres have eight figures before the point."""

MM_PER_INCH = 25.4


@dataclass(frozen=True, slots=True)
class Measured:
    """Writes lengths and areas in "in" or "mm"."""

    unit: str

    @property
    def per_inch(self) -> float:
        return MM_PER_INCH if self.unit == "mm" else 1.0

    def length(self, inches: float) -> float:
        """A length of `inches`."""
        return _plain(float(inches) * self.per_inch)

    def area(self, square_inches: float) -> float:
        """An area of `square_inches`."""
        return round(float(square_inches) * self.per_inch**2, AREA_PLACES) + 0.0

    def lengths(self, inches: Iterable[Any]) -> list[float]:
        """Many lengths."""
        per_inch = self.per_inch
        return [_plain(float(value) * per_inch) for value in inches]

    def outline(self, points: Iterable[Any]) -> list[list[float]]:
        """Points of an outline, each as x, y."""
        per_inch = self.per_inch
        return [[_plain(float(x) * per_inch), _plain(float(y) * per_inch)] for x, y in points]


def _plain(value: float) -> float:
    """Rounded, and never a negative zero."""
    return round(value, PLACES) + 0.0
