"""JSON text to plain values, with what JSON itself leaves open refused: keys given twice, NaN, depth without end."""

import json
from collections.abc import Iterator
from math import isfinite
from typing import Any

from app.panel.faults import Fault, Refused
from app.panel.wording import quoted

LARGEST_BYTES = 16_000_000
"""A project file of 500 panels has about 2 MB."""

DEEPEST = 32
"""A project file is 9 deep."""

_TOO_DEEP = Fault("", "lists or objects nested without end", f"values nested at most {DEEPEST} deep")


def read_text(text: str | bytes) -> Any:
    """The values that a JSON text says; empty text and whatever is no clean JSON in UTF-8 raises Refused.

    A mistake in the text has line and column as its path, a key given twice or a number without a value its place.
    """
    if len(text) > LARGEST_BYTES:
        raise Refused([Fault("", f"more than {LARGEST_BYTES:,} bytes", f"at most {LARGEST_BYTES:,} bytes")])
    document = _parsed(text if isinstance(text, str) else _decoded(text))
    faults = list(_unclean(document, 0))
    if faults:
        raise Refused(faults)
    return document


class _KeyTwice(dict[str, Any]):
    """An object in which a key was given twice."""

    key = ""


def _decoded(text: bytes) -> str:
    try:
        return text.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = text.count(b"\n", 0, error.start) + 1
        found = f"the byte 0x{text[error.start]:02X}, which is not UTF-8"
        raise Refused([Fault(f"line {line}, byte {error.start + 1} of the file", found, "text in UTF-8")]) from error


def _parsed(text: str) -> Any:
    try:
        return json.loads(text.removeprefix("\ufeff"), object_pairs_hook=_object, parse_int=_whole)
    except json.JSONDecodeError as error:
        raise Refused([_syntax_fault(error)]) from error
    except RecursionError as error:
        raise Refused([_TOO_DEEP]) from error


def _object(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    made = dict(pairs)
    if len(made) == len(pairs):
        return made
    seen: set[str] = set()
    marked = _KeyTwice(made)
    marked.key = next(key for key, _ in pairs if key in seen or seen.add(key))  # type: ignore[func-returns-value]
    return marked


def _whole(digits: str) -> int | float:
    """Whole numbers past every length as floats: Python refuses to read some thousand digits."""
    return int(digits) if len(digits) <= 30 else float(digits)


def _syntax_fault(error: json.JSONDecodeError) -> Fault:
    near = error.doc[error.pos : error.pos + 20].split("\n")[0]
    found = quoted(near) if near.strip() else "the end of the text" if error.pos >= len(error.doc) else "a line's end"
    reason = error.msg[0].lower() + error.msg[1:]
    return Fault(f"line {error.lineno}, column {error.colno}", found, f"JSON ({reason})")


def _unclean(value: Any, depth: int) -> Iterator[Fault]:
    """Faults of a value and all it holds; paths are relative to it."""
    if depth > DEEPEST:
        yield _TOO_DEEP
    elif isinstance(value, dict):
        yield from _unclean_object(value, depth)
    elif isinstance(value, list):
        for place, item in enumerate(value):
            yield from (fault.under(f"[{place}]") for fault in _unclean(item, depth + 1))
    elif isinstance(value, float) and not isfinite(value):
        yield Fault("", "NaN" if value != value else "a number without end", "a finite number")
    elif isinstance(value, str) and not value.isascii():
        yield from _unclean_text(value)


def _unclean_object(value: dict[str, Any], depth: int) -> Iterator[Fault]:
    if isinstance(value, _KeyTwice):
        yield Fault("", f"the key {quoted(value.key)} twice", "every key once")
    for key, item in value.items():
        yield from _unclean_text(key)
        yield from (fault.under(printable(key)) for fault in _unclean(item, depth + 1))


def _unclean_text(text: str) -> Iterator[Fault]:
    """Half of a surrogate pair is no character, and no file can hold it."""
    if any("\ud800" <= sign <= "\udfff" for sign in text):
        yield Fault("", quoted(text), "whole characters, not half of a surrogate pair")


def printable(key: str) -> str:
    """A key as it stands in a path: on one line, cut short."""
    return quoted(key)[1:-1] if key else "''"
