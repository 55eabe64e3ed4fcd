"""Lengths and words as lettered on a drawing."""

import re
from functools import lru_cache

from app.lengths import SMALLEST_MARK, format_length

FRACTION_SLASH = "\u2044"
"""Fonts draw digits around this slash as a true fraction, numerator over slash, on screen and on paper alike."""

_FRACTION = re.compile(r"(?:(?<=\d) )?(\d+)/(\d+)")

_EM = 0.5
"""Mean advance of the drawing's sans in ems, on the wide side; its tabular figures are 0.497 em."""


@lru_cache(maxsize=4096)
def lettered(inches: float, unit: str = "in") -> str:
    """A length with its fraction drawn true; inches to the nearest 1/16, or whole millimetres."""
    return with_fractions(format_length(inches, unit))


def lettered_miss(inches: float, unit: str = "in") -> str:
    """A distance that is not met: one below the tape's smallest mark as less than that mark, never as nothing."""
    mark = SMALLEST_MARK[unit]
    return f"< {lettered(mark, unit)}" if abs(inches) < mark / 2 else lettered(abs(inches), unit)


def with_fractions(text: str) -> str:
    """Text with every n/d as a true fraction, a thin space between it and the whole number before it."""
    return _FRACTION.sub(_true_fraction, text)


def _true_fraction(match: re.Match[str]) -> str:
    space = "\u2009" if match.group(0).startswith(" ") else ""
    return f"{space}{match.group(1)}{FRACTION_SLASH}{match.group(2)}"


def text_width_mm(text: str, size_mm: float) -> float:
    """About how wide a text is on paper, mm; 0 for none."""
    return len(text) * _EM * size_mm


def fitting(words: str, room_mm: float, size_mm: float) -> str:
    """Words cut short to a width, at least their first sign."""
    if text_width_mm(words, size_mm) <= room_mm:
        return words
    kept = max(1, int(room_mm / text_width_mm("n", size_mm)) - 1)
    return f"{words[:kept].rstrip()}…"
