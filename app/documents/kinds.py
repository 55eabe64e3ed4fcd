"""Single values of a project file, each read with a fault that says what was found, and written as it was typed."""

from collections.abc import Collection
from dataclasses import dataclass
from datetime import date
from fractions import Fraction
from functools import lru_cache
from math import isfinite
from typing import Any, Protocol
from unicodedata import category

from app.lengths import Length, LengthError, Unit, parse
from app.lengths.length import NM_PER_UNIT
from app.panel.faults import Fault, Refused
from app.panel.wording import one_of, quoted

INCH = 25_400_000
"""Nanometres."""

_NOT_PRINTED = ("Cc", "Cf", "Cs", "Zl", "Zp")


@dataclass(frozen=True, slots=True)
class Setting:
    """What a value's meaning rests on elsewhere in the file: units, and the names of brick sizes and bonds."""

    length_unit: Unit
    temperature_unit: str = "F"
    sizes: Collection[str] = ()
    bonds: Collection[str] = ()


class Kind(Protocol):
    """How one kind of value is read and written."""

    def read(self, value: Any, setting: Setting) -> Any:
        """The value; raises Refused, paths relative to it."""

    def write(self, value: Any, setting: Setting, like: Any) -> Any:
        """What a file holds for the value; `like` is what it held before, None for nothing."""


def refuse(found: str, expected: str) -> Refused:
    """A refusal of the value itself."""
    return Refused([Fault("", found, expected)])


def in_words(value: Any) -> str:
    """A value of a file as a message says it, with its type."""
    match value:
        case None:
            return "null"
        case bool():
            return str(value).lower()
        case str():
            return f"the text {quoted(value)}" if value else "an empty text"
        case int() | float():
            return f"the number {number_in_words(value)}"
        case list():
            return f"a list of {len(value):,}"
        case dict():
            return "an object"
    return f"a {type(value).__name__}"


def number_in_words(value: int | float) -> str:
    """Digits as a person reads them; never a page of them."""
    if isinstance(value, float):
        return "NaN" if value != value else f"{value:.12g}"
    return str(value) if abs(value) < 10**18 else "of more than 18 digits"


@dataclass(frozen=True, slots=True)
class Text:
    """A short text; `longest` None leaves everything but the type to a later check."""

    what: str
    longest: int | None = None

    def read(self, value: Any, setting: Setting) -> str:  # noqa: ARG002
        if not isinstance(value, str):
            raise refuse(in_words(value), f"{self.what} as text")
        if self.longest is not None:
            self._refuse_odd(value, self.longest)
        return value

    def write(self, value: str, setting: Setting, like: Any) -> str:  # noqa: ARG002
        return value

    def _refuse_odd(self, value: str, longest: int) -> None:
        if not value.strip():
            raise refuse(in_words(value), f"{self.what} of at least one letter or figure")
        if len(value) > longest:
            raise refuse(f"{len(value):,} characters", f"{self.what} of at most {longest} characters")
        if any(category(sign) in _NOT_PRINTED for sign in value):
            raise refuse(in_words(value), f"{self.what} of signs that print, on one line")


@dataclass(frozen=True, slots=True)
class Day:
    """A day of the calendar, year first (ISO 8601)."""

    what: str

    def read(self, value: Any, setting: Setting) -> str:  # noqa: ARG002
        expected = f"{self.what} as a text, year, month and day such as 2026-12-01"
        if not isinstance(value, str) or len(value) != len("2026-12-01"):
            raise refuse(in_words(value), expected)
        try:
            date.fromisoformat(value)
        except ValueError as error:
            raise refuse(in_words(value), expected) from error
        return value

    def write(self, value: str, setting: Setting, like: Any) -> str:  # noqa: ARG002
        return value


@dataclass(frozen=True, slots=True)
class Known:
    """The name of a brick size or a bond that the setting knows; `names` is "sizes" or "bonds"."""

    what: str
    names: str

    def read(self, value: Any, setting: Setting) -> str:
        known: Collection[str] = getattr(setting, self.names)
        if not isinstance(value, str):
            raise refuse(in_words(value), f"{self.what} as text: {one_of(known, '')}")
        if value not in known:
            raise refuse(quoted(value), one_of(known, value))
        return value

    def write(self, value: str, setting: Setting, like: Any) -> str:  # noqa: ARG002
        return value


@dataclass(frozen=True, slots=True)
class OneOf:
    """One of a few words."""

    words: tuple[str, ...]

    def read(self, value: Any, setting: Setting) -> str:  # noqa: ARG002
        if not isinstance(value, str) or value not in self.words:
            raise refuse(in_words(value), self._expected(value))
        return value

    def write(self, value: str, setting: Setting, like: Any) -> str:  # noqa: ARG002
        return value

    def _expected(self, value: Any) -> str:
        if len(self.words) == 1:
            return quoted(self.words[0])
        return one_of(self.words, value if isinstance(value, str) else "")


@dataclass(frozen=True, slots=True)
class Flag:
    """True or false."""

    def read(self, value: Any, setting: Setting) -> bool:  # noqa: ARG002
        if not isinstance(value, bool):
            raise refuse(in_words(value), "true or false")
        return value

    def write(self, value: bool, setting: Setting, like: Any) -> bool:  # noqa: ARG002
        return value


@dataclass(frozen=True, slots=True)
class Number:
    """A number from `least` to `most`, whole if `is_whole`; `more_than` takes the place of `least`."""

    what: str
    least: float | None = None
    most: float | None = None
    more_than: float | None = None
    is_whole: bool = False

    def read(self, value: Any, setting: Setting) -> int | float:  # noqa: ARG002
        is_number = isinstance(value, int | float) and not isinstance(value, bool)
        if not is_number or (isinstance(value, float) and not isfinite(value)):
            raise refuse(in_words(value), self._expected())
        if self._is_out_of_range(value) or (self.is_whole and value != int(value)):
            raise refuse(number_in_words(value), self._expected())
        return int(value) if self.is_whole else float(value)

    def write(self, value: float, setting: Setting, like: Any) -> int | float:  # noqa: ARG002
        if isinstance(like, int | float) and not isinstance(like, bool) and like == value:
            return like
        return int(value) if value == int(value) else value

    def _is_out_of_range(self, value: int | float) -> bool:
        is_low = self.least is not None and value < self.least
        is_at_low = self.more_than is not None and value <= self.more_than
        return is_low or is_at_low or (self.most is not None and value > self.most) or abs(value) > 10**15

    def _expected(self) -> str:
        limits = [
            f"more than {_limit(self.more_than)}" if self.more_than is not None else "",
            f"{_limit(self.least)} or more" if self.least is not None else "",
            f"at most {_limit(self.most)}" if self.most is not None else "",
        ]
        said = " and ".join(filter(None, limits))
        return f"{self.what} as a {'whole ' if self.is_whole else ''}number{', ' if said else ''}{said}"


def _limit(value: float) -> str:
    """A limit in figures, thousands apart."""
    return f"{value:,.12g}"


@dataclass(frozen=True, slots=True)
class Measure:
    """A length: a number of the file's unit, or a text such as `12'-6 3/8"` or `3810 mm`; lowest and highest in nm."""

    what: str
    low: int | None = None
    high: int | None = None
    range_in_words: str = ""

    def read(self, value: Any, setting: Setting) -> Length:
        length = read_length(value, setting.length_unit, self.what)
        is_low = self.low is not None and length.nm < self.low
        if is_low or (self.high is not None and length.nm > self.high):
            raise refuse(_as_typed(value, setting.length_unit), f"{self.what} of {self.range_in_words}")
        return length

    def write(self, value: Length, setting: Setting, like: Any) -> str | int | float:
        return write_length(value, setting.length_unit, like)


def small(what: str, low: int, low_in_words: str) -> Measure:
    """A length of at most 10 ft, lowest in nm and in words."""
    return Measure(what, low, 120 * INCH, f"{low_in_words} and at most 10 ft (3048 mm)")


def read_length(value: Any, unit: Unit, what: str = "a length") -> Length:
    """A length as a file says it, what was typed kept beside it; raises Refused."""
    is_number = isinstance(value, int | float) and not isinstance(value, bool)
    if not is_number and not isinstance(value, str):
        raise refuse(in_words(value), f"{what} as a number ({unit}) or a text such as 12'-6 3/8\" or 3810 mm")
    try:
        return _length(value, unit) if is_number and not value else _read_before(value, unit)
    except LengthError as error:
        found = _place(value, error) if isinstance(value, str) else f"{number_in_words(value)} {unit}"
        raise refuse(found, f"{error.expected}, for example {error.example}") from error


def _length(value: str | int | float, unit: Unit) -> Length:
    return parse(value, unit) if isinstance(value, str) else Length.from_number(value, unit)


_read_before = lru_cache(maxsize=8192, typed=True)(_length)
"""Lengths read lately: an edit leaves most of a panel as it was. Not for 0, which -0.0 is taken for."""


def write_length(length: Length, unit: Unit, like: Any = None) -> str | int | float:
    """What was typed, else what stood there if it says the same, else the shortest number of `unit` that does."""
    for said in (length.typed, like):
        if said is not None and _says(said, length, unit):
            return said
    return _shortest(length.nm, unit)


def _place(text: str, error: LengthError) -> str:
    is_piece = error.found and text.startswith(error.found, error.position)
    found = quoted(error.found) if is_piece else error.found
    return f"{in_words(text)}, at character {error.position + 1} {found}" if text else in_words(text)


def _says(said: Any, length: Length, unit: Unit) -> bool:
    try:
        return read_length(said, unit).nm == length.nm
    except Refused:
        return False


def _shortest(nm: int, unit: Unit) -> int | float:
    value = Fraction(nm, NM_PER_UNIT[unit])
    if value.denominator == 1:
        return value.numerator
    candidates = (float(round(value, places)) for places in range(1, 16))
    return next((said for said in candidates if Length.from_number(said, unit).nm == nm), float(value))


def _as_typed(value: Any, unit: Unit) -> str:
    return in_words(value) if isinstance(value, str) else f"{number_in_words(value)} {unit}"
