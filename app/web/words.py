"""Numbers and times as pages write them."""

from collections.abc import Sequence
from datetime import datetime


def counted(number: int, one: str, many: str | None = None) -> str:
    """`1 panel`, `12 panels`, `no panels`."""
    if number == 0:
        return f"no {many or one + 's'}"
    return f"{number:,} {one if number == 1 else many or one + 's'}"


def at(moment: datetime) -> str:
    """Date and time on this machine's clock."""
    local = moment.astimezone()
    return f"{local.day} {local:%b %Y, %H:%M}"


def listed(names: Sequence[str]) -> str:
    """`A`, `A and B`, `A, B and C`; empty for no names."""
    return " and ".join([", ".join(names[:-1]), names[-1]] if len(names) > 1 else names)
