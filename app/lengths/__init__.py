"""Text and exact lengths: parse, format. Lengths are whole nanometres; a person's own words are kept beside them."""

from app.lengths.error import LengthError
from app.lengths.format import SMALLEST_MARK, LengthParts, format_length, parts
from app.lengths.length import NM_PER_INCH, Length, Unit
from app.lengths.parse import parse

__all__ = [
    "NM_PER_INCH",
    "SMALLEST_MARK",
    "Length",
    "LengthError",
    "LengthParts",
    "Unit",
    "format_length",
    "parse",
    "parts",
]
