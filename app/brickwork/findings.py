"""A trouble with a place, its numbers and a way out."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Finding:
    """`code` is stable; severity is "note", "warning" or "error"; x, y in the face frame, inches."""

    code: str
    severity: str
    x: float
    y: float
    text: str
