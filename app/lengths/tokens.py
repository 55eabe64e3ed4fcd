"""Cut the text of a length into tokens, each with its place in the text as typed."""

import re
import unicodedata
from dataclasses import dataclass
from enum import Enum
from fractions import Fraction

from app.lengths.error import LengthError
from app.lengths.format import DENOMINATORS
from app.lengths.length import NM_PER_UNIT

LONGEST_TEXT = 80
EXAMPLE = "12'-6 3/8\""

_INCH_WORDS = ("in", "inch", "inches")
_FOOT_WORDS = ("ft", "foot", "feet")

# Alternatives in order: a fraction before a number, two feet marks (an inch mark typed twice) before one.
_TOKEN = re.compile(
    r"""(?P<blank>\s+)
    |(?P<fraction>[0-9]+[/⁄∕][0-9]+|[¼-¾⅐-⅞↉])
    |(?P<number>[0-9]+(?:\.[0-9]+)?|\.[0-9]+)
    |(?P<inch>["“”″ʺ]|['‘’′ʹ]{2})
    |(?P<foot>['‘’′ʹ])
    |(?P<dash>[-‐‑‒–—−])
    |(?P<word>[A-Za-z]+\.?)""",
    re.VERBOSE,
)


class Kind(Enum):
    NUMBER = "number"
    FRACTION = "fraction"
    FOOT = "foot"
    INCH = "inch"
    METRIC = "metric"
    DASH = "dash"
    END = "end"


@dataclass(frozen=True, slots=True)
class Token:
    """`value` is for numbers and fractions, `unit` for metric words; `is_apart` tells of a blank before the token."""

    kind: Kind
    text: str
    position: int
    is_apart: bool
    value: Fraction = Fraction(0)
    unit: str = ""

    @property
    def end(self) -> int:
        return self.position + len(self.text)

    @property
    def is_whole(self) -> bool:
        return self.kind is Kind.NUMBER and "." not in self.text


def scan(text: str) -> list[Token]:
    """The tokens of `text` up to and with END (alone for empty text); raises LengthError at a sign, word or fraction
    that no length has."""
    if len(text) > LONGEST_TEXT:
        raise LengthError(text, 0, f"{len(text):,} characters", f"at most {LONGEST_TEXT} characters", EXAMPLE)
    tokens: list[Token] = []
    position, is_apart = 0, False
    while position < len(text):
        match = _TOKEN.match(text, position)
        if match is None:
            raise _strange(text, position)
        if match.lastgroup != "blank":
            tokens.append(_token(text, match, is_apart))
        is_apart = match.lastgroup == "blank"
        position = match.end()
    return [*tokens, Token(Kind.END, "", len(text.rstrip()), is_apart)]


def _token(text: str, match: re.Match[str], is_apart: bool) -> Token:
    said, position = match.group(), match.start()
    if match.lastgroup == "word":
        return _word(text, said, position, is_apart)
    kind = Kind(match.lastgroup)
    if kind is Kind.NUMBER:
        return Token(kind, said, position, is_apart, Fraction(said))
    if kind is Kind.FRACTION:
        return Token(kind, said, position, is_apart, _fraction(text, said, position))
    return Token(kind, said, position, is_apart)


def _word(text: str, said: str, position: int, is_apart: bool) -> Token:
    word = said.lower().removesuffix(".")
    if word in _INCH_WORDS:
        return Token(Kind.INCH, said, position, is_apart)
    if word in _FOOT_WORDS:
        return Token(Kind.FOOT, said, position, is_apart)
    if said.lower() in NM_PER_UNIT:
        return Token(Kind.METRIC, said, position, is_apart, unit=said.lower())
    raise LengthError(text, position, said, "a unit: ft, in, mm, cm or m", EXAMPLE)


def _fraction(text: str, said: str, position: int) -> Fraction:
    """The value of `3/8` or `⅜`: below 1, in the divisions of a tape rule."""
    plain = re.sub("[⁄∕]", "/", unicodedata.normalize("NFKC", said))
    numerator, denominator = (int(digits) for digits in plain.split("/"))
    if denominator not in DENOMINATORS[1:]:
        start = 0 if len(said) == 1 else len(said) - len(plain.split("/")[1])
        expected = "a fraction in 2, 4, 8, 16, 32 or 64, nothing finer than 1/64 in"
        raise LengthError(text, position + start, said[start:], expected, '6 3/8"')
    if numerator >= denominator:
        raise LengthError(text, position, said, "a fraction below 1", '6 3/8"')
    return Fraction(numerator, denominator)


def _strange(text: str, position: int) -> LengthError:
    sign = text[position]
    if sign == ",":
        return LengthError(text, position, sign, "a point before decimals and no sign between thousands", "12.6")
    if sign in "/⁄∕":
        return LengthError(text, position, sign, "one whole number on each side of a fraction's stroke", EXAMPLE)
    if sign == "≈":
        return LengthError(text, position, sign, "an exact length, not a rounded label", EXAMPLE)
    return LengthError(text, position, sign, "digits, a fraction, a dash, or a unit", EXAMPLE)
