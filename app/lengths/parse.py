"""Read a length as people type it: feet-inch-fraction, decimal, or metric; the unit is never guessed from the size."""

from fractions import Fraction
from typing import NoReturn

from app.lengths.error import LengthError
from app.lengths.format import format_length
from app.lengths.length import Length, nanometres
from app.lengths.tokens import EXAMPLE, Kind, Token, scan


def parse(text: str, unit: str = "in") -> Length:
    """The length that `text` says, `text` kept as typed; a number without any mark (`150`, `12.5`) is in `unit`
    ("in", "ft", "mm", "cm" or "m"), which the caller knows. Decimals go to the nearest nanometre.

    `12-6` is feet and inches, `6-3/8` and `6 3/8` are inches, in every `unit`; a sign takes the whole length. Empty
    text, and whatever leaves a doubt (`12 6 3/8`, `12'14"`, `12,6`, `1/128`, a label marked `≈`), raises LengthError.
    """
    tokens = _Reader(text)
    sign = -1 if tokens.take(Kind.DASH) else 1
    number, found_unit = _measure(tokens)
    return Length(sign * nanometres(number, found_unit or unit, text), text)


class _Reader:
    """Walks over the tokens of one text."""

    def __init__(self, text: str) -> None:
        self.text = text
        self.tokens = scan(text)
        self.place = 0

    def ahead(self, steps: int = 0) -> Token:
        return self.tokens[min(self.place + steps, len(self.tokens) - 1)]

    def take(self, *kinds: Kind) -> Token | None:
        token = self.ahead()
        if token.kind not in kinds:
            return None
        self.place += 1
        return token

    def refuse(self, expected: str, example: str = EXAMPLE, token: Token | None = None) -> NoReturn:
        token = token or self.ahead()
        is_empty = token.kind is Kind.END and len(self.tokens) == 1
        found = token.text or ("nothing" if is_empty else "the end")
        raise LengthError(self.text, token.position, found, expected, example)

    def finish(self, expected: str, example: str = EXAMPLE) -> None:
        if self.ahead().kind is not Kind.END:
            self.refuse(expected, example)


def _measure(tokens: _Reader) -> tuple[Fraction, str]:
    """A number and its unit, "" when no mark tells the unit."""
    first = tokens.ahead()
    if first.kind not in (Kind.NUMBER, Kind.FRACTION):
        tokens.refuse("a number")
    follower = tokens.ahead(1).kind
    if follower is Kind.METRIC:
        return _metric(tokens, first)
    if follower is Kind.FOOT:
        return _marked_feet(tokens, first)
    if follower is Kind.DASH and tokens.ahead(2).kind is Kind.NUMBER:
        return _dashed_feet(tokens, first)
    return _inches_alone(tokens)


def _metric(tokens: _Reader, number: Token) -> tuple[Fraction, str]:
    if number.kind is Kind.FRACTION:
        tokens.refuse("a decimal number before a metric unit", "12.5 mm")
    unit = tokens.ahead(1).unit
    tokens.place += 2
    tokens.finish("nothing after a metric unit", "3810 mm")
    return number.value, unit


def _marked_feet(tokens: _Reader, feet: Token) -> tuple[Fraction, str]:
    """`12'`, `12.5'`, `12'6-3/8`, `12'-6 3/8"`: the feet carry their mark."""
    if feet.kind is Kind.FRACTION:
        tokens.refuse("whole or decimal feet before the feet mark", "12.5'")
    tokens.place += 2
    if tokens.ahead().kind is Kind.END:
        return feet.value, "ft"
    if not feet.is_whole:
        tokens.refuse("nothing after decimal feet", "12.5'")
    tokens.take(Kind.DASH)
    return _feet_and_inches(tokens, feet)


def _dashed_feet(tokens: _Reader, feet: Token) -> tuple[Fraction, str]:
    """`12-6`, `12-6 3/8`, `12-6-3/8`: a dash between two numbers parts feet from inches."""
    if not feet.is_whole:
        tokens.refuse("whole feet before the dash", EXAMPLE, feet)
    _refuse_blanks_at_dash(tokens, 1)
    tokens.place += 2
    return _feet_and_inches(tokens, feet)


def _feet_and_inches(tokens: _Reader, feet: Token) -> tuple[Fraction, str]:
    first = tokens.ahead()
    inches = _inches(tokens)
    mark = tokens.take(Kind.INCH)
    if inches >= 12:
        end = mark.end if mark else tokens.tokens[tokens.place - 1].end
        example = format_length(Length(nanometres(12 * feet.value + int(inches), "in", tokens.text)))
        found = tokens.text[first.position : end]
        raise LengthError(tokens.text, first.position, found, "inches below 12 after feet", example)
    tokens.finish("the end after inches" if mark else "a fraction, an inch mark, or the end after inches")
    return 12 * feet.value + inches, "in"


def _inches_alone(tokens: _Reader) -> tuple[Fraction, str]:
    """`150`, `150"`, `6 3/8`, `6-3/8`, `3/8`: only a number that stands by itself leaves its unit open."""
    number, start = tokens.ahead(), tokens.place
    inches = _inches(tokens)
    is_bare = number.kind is Kind.NUMBER and tokens.place == start + 1
    if tokens.take(Kind.INCH):
        tokens.finish("the end after inches")
        return inches, "in"
    if is_bare:
        tokens.finish("a unit, a fraction, or a dash between feet and inches")
        return inches, ""
    tokens.finish("an inch mark, or the end after a fraction", '6 3/8"')
    return inches, "in"


def _inches(tokens: _Reader) -> Fraction:
    """Whole inches and fraction, decimal inches, or a fraction alone."""
    fraction = tokens.take(Kind.FRACTION)
    if fraction:
        return fraction.value
    number = tokens.take(Kind.NUMBER)
    if not number:
        tokens.refuse("inches")
    if tokens.ahead().kind is Kind.DASH:
        _refuse_blanks_at_dash(tokens, 0)
        tokens.place += 1
        if tokens.ahead().kind is not Kind.FRACTION:
            tokens.refuse("a fraction after the dash")
    fraction = tokens.take(Kind.FRACTION)
    if fraction and not number.is_whole:
        tokens.refuse("nothing after decimal inches", '6.375"', fraction)
    return number.value + (fraction.value if fraction else 0)


def _refuse_blanks_at_dash(tokens: _Reader, steps: int) -> None:
    """`12 - 6` and `12 -6` read as well as a difference; only after a feet mark is a dash never a minus."""
    dash = tokens.ahead(steps)
    if dash.is_apart or tokens.ahead(steps + 1).is_apart:
        tokens.refuse("no blank beside the dash, or a feet mark before it", "12'-6\"", dash)
