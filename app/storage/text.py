"""How values stand in text columns: JSON as it came, instants in UTC."""

import json
import secrets
from datetime import UTC, datetime
from typing import Any


def new_id() -> str:
    """An id that cannot be guessed: 64 random bits, in hexadecimal."""
    return secrets.token_hex(8)


def json_text(value: Any) -> str:
    """JSON in key order as given; raises ValueError for a number that JSON cannot hold."""
    return json.dumps(value, allow_nan=False, separators=(",", ":"))


def json_value(text: str) -> Any:
    """What `json_text` wrote."""
    return json.loads(text)


def time_text(moment: datetime) -> str:
    """An instant in UTC to the millisecond; texts sort as the instants do. Raises ValueError without a zone."""
    if moment.tzinfo is None:
        raise ValueError(f"time: found {moment.isoformat()} without a zone, expected one with a zone")
    return moment.astimezone(UTC).isoformat(timespec="milliseconds").replace("+00:00", "Z")


def moment(text: str) -> datetime:
    """The instant that `time_text` wrote."""
    return datetime.fromisoformat(text)
