"""What is wrong with an input: where, what was found, what was expected."""

from collections.abc import Iterable
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Fault:
    """One thing wrong at one place; `path` reads like `walls[0].panels[2].openings[1].rect`."""

    path: str
    found: str
    expected: str

    def __str__(self) -> str:
        return f"{self.path or 'file'}: found {self.found}, expected {self.expected}"

    def under(self, prefix: str) -> "Fault":
        """The same fault seen from an enclosing object."""
        joint = "" if not self.path or self.path.startswith("[") else "."
        return Fault(f"{prefix}{joint}{self.path}" if prefix else self.path, self.found, self.expected)


class Refused(ValueError):
    """An input that cannot be used; carries every fault found."""

    def __init__(self, faults: Iterable[Fault]) -> None:
        self.faults = tuple(faults)
        super().__init__("\n".join(str(fault) for fault in self.faults))
