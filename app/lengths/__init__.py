"""Text and exact lengths: parse, format. Lengths are whole nanometres; a person's own words are kept beside them."""

from app.lengths.error import LengthError
from app.lengths.length import NM_PER_INCH, Length, Unit

__all__ = ["NM_PER_INCH", "Length", "LengthError", "Unit"]
