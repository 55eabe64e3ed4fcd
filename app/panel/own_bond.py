"""A bond of the project's own, as typed: a motif of cells and the two vectors it repeats by, in modules."""

from dataclasses import dataclass

ModulePoint = tuple[str, str]
"""Across and up, each a sum of modules as typed: "1/2 P", "2 G", "S - P", "0"."""


@dataclass(frozen=True, slots=True)
class OwnCell:
    """One unit of the motif: its kind, and where its cell's lower-left corner is."""

    kind: str
    at: ModulePoint


@dataclass(frozen=True, slots=True)
class OwnBond:
    """`brickwork.own_bonds` reads it; P is a head module, G a gauge, S a face height with a head joint."""

    name: str
    cells: tuple[OwnCell, ...]
    across: ModulePoint
    up: ModulePoint
    turn: float = 0.0
