"""A trouble with a place, its numbers and a way out."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Finding:
    """`code` is stable; severity is "note", "warning" or "error"; x, y in the face frame, inches.

    `about` says in stable words what it is about ("W1 head"), so that it can be accepted and found again.
    """

    code: str
    severity: str
    x: float
    y: float
    text: str
    about: str = ""
