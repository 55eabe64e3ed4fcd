"""Numbers and times as pages write them."""

from collections.abc import Sequence
from datetime import datetime

from app.lengths import format_length


def counted(number: int, one: str, many: str | None = None) -> str:
    """`1 panel`, `12 panels`, `no panels`."""
    if number == 0:
        return f"no {many or one + 's'}"
    return f"{number:,} {one if number == 1 else many or one + 's'}"


def at(moment: datetime) -> str:
    """Date and time on this machine's clock."""
    local = moment.astimezone()
    return f"{local.day} {local:%b %Y, %H:%M}"


def sized(width: float, height: float, unit: str) -> str:
    """Width and height in inches as `30'-0" x 26'-8"` or `6310 x 8200 mm`."""
    wide, high = format_length(width, unit), format_length(height, unit)
    return f"{wide.removesuffix(' mm')} x {high}"


def listed(names: Sequence[str], word: str = "and") -> str:
    """`A`, `A and B`, `A, B and C`, or with another word; empty for no names."""
    return f" {word} ".join([", ".join(names[:-1]), names[-1]] if len(names) > 1 else names)
