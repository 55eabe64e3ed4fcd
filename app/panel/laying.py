"""How sheets of liner are laid on a panel: where the first one lies, and which way the next ones follow."""

from dataclasses import dataclass

CORNERS = ("bed lower left", "bed lower right", "bed upper left", "bed upper right")
"""Where laying starts, as seen on the bed; bed lower left is the lower right of the finished face."""

DIRECTIONS = ("across", "up")
"""Rows of sheets along the courses one after another, or columns of sheets from the foot to the top."""


@dataclass(frozen=True, slots=True)
class Laying:
    """The starting corner, one of `CORNERS`, and the direction in which sheets follow, one of `DIRECTIONS`."""

    corner: str = CORNERS[0]
    direction: str = DIRECTIONS[0]
