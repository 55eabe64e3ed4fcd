"""Read a length in modules as people type it: "1/2 P", "2 G", "S - P", "P/2 + G", "0"."""

import re
from fractions import Fraction
from typing import NoReturn

from app.brickwork.bond import ZERO, G, Module, P, S
from app.lengths import LengthError

MODULES = {"P": P, "G": G, "S": S}
MOST = 1_000
"""Modules: more than any motif needs; keeps a slip of the keyboard from becoming a bond a mile long."""

_EXAMPLE = "1/2 P"
_PARTS = "P, G or S (head module, gauge, face height with a head joint)"
_SIGNS = {"-": -1, "−": -1, "–": -1, "+": 1}
_SPACE = re.compile(r"\s*")
_NUMBER = re.compile(r"(?P<whole>[0-9]{1,6}(\.[0-9]{1,6})?)(\s*/\s*(?P<parts>[0-9]{1,4}))?")
_SHARE = re.compile(r"\s*/\s*(?P<parts>[0-9]{1,4})")


def read_module(text: str) -> Module:
    """The length that `text` says: a sum of terms, each a number of modules P, G or S, or 0.

    Empty text, a number without a module other than 0, and a share of 0 parts raise LengthError.
    """
    reader = _Reader(text)
    total = reader.term(reader.sign() or 1)
    while not reader.is_done:
        sign = reader.sign() or reader.refuse("+, - or the end")
        total = total + reader.term(sign)
    return total


class _Reader:
    """Walks over one text."""

    def __init__(self, text: str) -> None:
        self.text, self.place = text, 0
        self._skip()

    @property
    def is_done(self) -> bool:
        return self.place == len(self.text)

    def _skip(self) -> None:
        self._take(_SPACE)

    def _take(self, pattern: re.Pattern[str]) -> re.Match[str] | None:
        found = pattern.match(self.text, self.place)
        self.place = found.end() if found else self.place
        return found

    def refuse(self, expected: str, place: int | None = None) -> NoReturn:
        at = self.place if place is None else place
        found = self.text[at : at + 1] or ("the end" if self.text.strip() else "nothing")
        raise LengthError(self.text, at, found, expected, _EXAMPLE)

    def sign(self) -> int | None:
        """The sign ahead, None where there is none."""
        sign = _SIGNS.get(self.text[self.place : self.place + 1])
        if sign is not None:
            self.place += 1
            self._skip()
        return sign

    def term(self, sign: int) -> Module:
        start = self.place
        number = self._number()
        module = MODULES.get(self.text[self.place : self.place + 1].upper())
        if module is None:
            return self._nothing(number)
        self.place += 1
        times = (Fraction(1) if number is None else number) * self._share()
        if times > MOST:
            self.refuse(f"at most {MOST:,} modules", start)
        return module * float(sign * times)

    def _number(self) -> Fraction | None:
        start, found = self.place, self._take(_NUMBER)
        self._skip()
        return self._parted(Fraction(found["whole"]), found, start) if found else None

    def _share(self) -> Fraction:
        start, found = self.place, self._take(_SHARE)
        self._skip()
        return self._parted(Fraction(1), found, start) if found else Fraction(1)

    def _parted(self, number: Fraction, found: re.Match[str], start: int) -> Fraction:
        parts = int(found["parts"] or 1)
        if parts == 0:
            self.refuse("a share of at least one part", start)
        return number / parts

    def _nothing(self, number: Fraction | None) -> Module:
        if number is None:
            self.refuse(f"a number or {_PARTS}")
        if number != 0:
            self.refuse(_PARTS)
        return ZERO
