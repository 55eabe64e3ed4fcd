"""A value that stands for its key: so that a result can be kept for what it rests on, however large the value is."""

from dataclasses import dataclass, field
from typing import Generic, TypeVar

Value = TypeVar("Value")


@dataclass(frozen=True, slots=True)
class Keyed(Generic[Value]):
    """Equal to any other with the same key; `key` holds everything of `value` that a kept result depends on."""

    key: tuple[object, ...]
    value: Value = field(compare=False)
