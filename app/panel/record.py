"""A record made at the bed: what it must hold, and the digest that device and server compute alike.

The words of this contract: `id` (made on the device), `device`, `sequence` (1, 2, 3 … on that device), `release`,
`kind`, `body`, `at` (the device's clock, for information), `corrects` (the id of an earlier record, or null).
"""

import json
import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from hashlib import sha256
from typing import Any

from app.panel.faults import Fault, Refused
from app.panel.wording import quoted

LARGEST = 8_000
"""Bytes of one record as canonical JSON."""

_ID = re.compile(r"[0-9a-zA-Z-]{8,64}\Z")
KEYS = ("id", "device", "sequence", "release", "kind", "body", "at", "corrects")

KINDS: Mapping[str, tuple[str, ...]] = {
    "sheet": ("by", "sheet", "state"),
    "reading": ("by", "checkpoint", "reading", "bed", "tape", "verdict"),
    "brick": ("by", "step", "state"),
    "check": ("by", "item", "state"),
    "sign": ("by", "role"),
    "concrete": ("by", "state"),
    "strip": ("by", "step", "state"),
    "finding": ("by", "about", "text"),
    "withdraw": ("by", "why"),
}
"""Every kind of record and what its body holds, each a text."""

STATES = {
    "sheet": ("laid", "lifted"),
    "brick": ("placed", "open"),
    "check": ("yes", "open"),
    "concrete": ("begun", "placed", "open"),
    "strip": ("done", "open"),
}
"""What a record of this kind may say; the last one takes an earlier one back."""

LONGEST_TEXT = 400


@dataclass(frozen=True, slots=True)
class Record:
    """One record as the device made it; `digest` is over all of it."""

    id: str
    device: str
    sequence: int
    release: str
    kind: str
    body: Mapping[str, str]
    at: str
    corrects: str | None
    digest: str


def canonical(value: Mapping[str, Any]) -> bytes:
    """JSON with sorted keys and no blanks, in UTF-8: the same bytes here and on the device."""
    text = json.dumps(value, sort_keys=True, separators=(",", ":"), ensure_ascii=False, allow_nan=False)
    return text.encode("utf-8", "surrogatepass")


def record_digest(value: Mapping[str, Any]) -> str:
    """SHA-256 in hexadecimal of a record without its digest."""
    return sha256(canonical({key: value.get(key) for key in KEYS})).hexdigest()


def read_record(value: Any) -> Record:
    """A record as it came; raises Refused with everything that is wrong with it."""
    if not isinstance(value, dict):
        raise Refused([Fault("record", type(value).__name__, "an object")])
    faults = [*_key_faults(value), *(fault for key, check in _CHECKS.items() if (fault := check(key, value.get(key))))]
    if not faults:
        faults = list(_body_faults(value["kind"], value["body"]))
    if not faults:
        faults = list(_whole_faults(value))
    if faults:
        raise Refused(faults)
    return Record(**{key: value[key] for key in KEYS}, digest=value["digest"])


def _key_faults(value: Mapping[str, Any]) -> Iterator[Fault]:
    for key in value:
        if key not in (*KEYS, "digest"):
            yield Fault(str(key)[:40], "this key", f"one of {', '.join((*KEYS, 'digest'))}")


def _id(key: str, value: Any) -> Fault | None:
    if isinstance(value, str) and _ID.match(value):
        return None
    return Fault(key, _found(value), "8 to 64 letters, figures and hyphens")


def _sequence(key: str, value: Any) -> Fault | None:
    if isinstance(value, int) and not isinstance(value, bool) and 1 <= value < 2**53:
        return None
    return Fault(key, _found(value), "a whole number from 1")


def _kind(key: str, value: Any) -> Fault | None:
    return (
        None if isinstance(value, str) and value in KINDS else Fault(key, _found(value), f"one of {', '.join(KINDS)}")
    )


def _body(key: str, value: Any) -> Fault | None:
    return None if isinstance(value, dict) else Fault(key, _found(value), "an object")


def _text(key: str, value: Any) -> Fault | None:
    is_one = isinstance(value, str) and 0 < len(value) <= 40
    return None if is_one else Fault(key, _found(value), "a text of 1 to 40 characters")


def _corrects(key: str, value: Any) -> Fault | None:
    return None if value is None else _id(key, value)


def _digest(key: str, value: Any) -> Fault | None:
    is_one = isinstance(value, str) and re.fullmatch("[0-9a-f]{64}", value)
    return None if is_one else Fault(key, _found(value), "64 hexadecimal figures")


_CHECKS: Mapping[str, Callable[[str, Any], Fault | None]] = {
    "id": _id,
    "device": _id,
    "sequence": _sequence,
    "release": _id,
    "kind": _kind,
    "body": _body,
    "at": _text,
    "corrects": _corrects,
    "digest": _digest,
}


def _body_faults(kind: str, body: Mapping[str, Any]) -> Iterator[Fault]:
    expected = KINDS[kind]
    for key in dict.fromkeys([*expected, *body]):
        value = body.get(key)
        if key not in expected:
            yield Fault(f"body.{str(key)[:40]}", "this key", f"one of {', '.join(expected)}")
        elif not isinstance(value, str) or len(value) > LONGEST_TEXT:
            yield Fault(f"body.{key}", _found(value), f"a text of at most {LONGEST_TEXT} characters")
        elif key == "state" and value not in STATES[kind]:
            yield Fault("body.state", _found(value), f"one of {', '.join(STATES[kind])}")
        elif key in ("by", "sheet", "checkpoint", "item", "role", "text") and not value.strip():
            yield Fault(f"body.{key}", "nothing", "a text")


def _whole_faults(value: Mapping[str, Any]) -> Iterator[Fault]:
    if value["kind"] == "withdraw" and value["corrects"] is None:
        yield Fault("corrects", "nothing", "the id of the record that is withdrawn")
    size = len(canonical({key: value[key] for key in KEYS}))
    if size > LARGEST:
        yield Fault("record", f"{size:,} bytes", f"at most {LARGEST:,} bytes")
    elif record_digest(value) != value["digest"]:
        yield Fault("digest", value["digest"][:16], f"{record_digest(value)[:16]}, the SHA-256 of the record")


def _found(value: Any) -> str:
    if value is None:
        return "nothing"
    return quoted(value) if isinstance(value, str) else json.dumps(value, default=str)[:60]
