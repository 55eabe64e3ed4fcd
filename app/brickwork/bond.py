"""A bond is data: a motif of cells and two lattice vectors, in modules of the brick.

A cell is a unit with the joint to its right and above it; the unit stands in the cell's lower-left corner.
"""

from dataclasses import dataclass

from app.panel.size import BrickSize


@dataclass(frozen=True, slots=True)
class Module:
    """A length in modules: P head module (length + joint), G gauge, S a unit stood up (height + head joint)."""

    p: float = 0.0
    g: float = 0.0
    s: float = 0.0

    def __add__(self, other: "Module | int") -> "Module":
        if isinstance(other, int):
            return self
        return Module(self.p + other.p, self.g + other.g, self.s + other.s)

    def __sub__(self, other: "Module") -> "Module":
        return self + other * -1

    def __neg__(self) -> "Module":
        return self * -1

    def __mul__(self, times: float) -> "Module":
        return Module(self.p * times, self.g * times, self.s * times)

    __rmul__ = __mul__

    def __truediv__(self, parts: float) -> "Module":
        return Module(self.p / parts, self.g / parts, self.s / parts)

    def inches(self, size: BrickSize) -> float:
        """The length for one brick size, inches."""
        return self.p * size.head_module + self.g * size.gauge + self.s * (size.height.inches + size.head_joint.inches)


P, G, S, ZERO = Module(p=1.0), Module(g=1.0), Module(s=1.0), Module()

KINDS = ("stretcher", "header", "soldier", "sailor", "rowlock", "shiner")


@dataclass(frozen=True, slots=True)
class Cell:
    """One unit of the motif: its kind, where its cell's lower-left corner is, and the cell's size.

    `parts` headers with their joints are as long as a stretcher with its own: 2, or 3 for a 12 in. brick 4 in. wide.
    """

    kind: str
    x: Module
    y: Module
    width: Module
    height: Module
    parts: int = 2

    def face(self, size: BrickSize) -> tuple[float, float]:
        """Width and height in inches of the cell's unit, its joints left out."""
        return face(self.kind, size, self.parts)


@dataclass(frozen=True, slots=True)
class Bond:
    """Repeating `cells` by `across` and `up` covers the plane once; `turn` turns it all, degrees anticlockwise."""

    name: str
    words: str
    cells: tuple[Cell, ...]
    across: tuple[Module, Module]
    up: tuple[Module, Module]
    turn: float = 0.0


def face(kind: str, size: BrickSize, parts: int = 2) -> tuple[float, float]:
    """Width and height in inches of a unit of this kind as it lies in the face, its own joints left out.

    A header shows a half bat's length; rowlock, sailor and shiner show the half bat's length as the brick's width.
    With `parts` 3 it is a third of the head module, less a joint.
    """
    length, height = size.length.inches, size.height.inches
    width = size.half_bat if parts == 2 else size.head_module / parts - size.head_joint.inches
    return {
        "stretcher": (length, height),
        "header": (width, height),
        "soldier": (height, length),
        "sailor": (width, length),
        "rowlock": (height, width),
        "shiner": (length, width),
    }[kind]


STANDING = ("soldier", "sailor", "rowlock")
"""Kinds whose length runs up the face."""


def stretcher(x: Module = ZERO, y: Module = ZERO) -> Cell:
    """A stretcher with its head joint and bed joint."""
    return Cell("stretcher", x, y, P, G)


def header(x: Module = ZERO, y: Module = ZERO) -> Cell:
    """A header: half a head module long, one course high."""
    return Cell("header", x, y, P / 2, G)


def soldier(x: Module = ZERO, y: Module = ZERO) -> Cell:
    """A stretcher stood on end, a head joint on every side."""
    return Cell("soldier", x, y, S, P)


def sailor(x: Module = ZERO, y: Module = ZERO) -> Cell:
    """A unit stood on end with its broad face out: half a head module wide, a head joint on every side."""
    return Cell("sailor", x, y, P / 2, P)


def rowlock(x: Module = ZERO, y: Module = ZERO) -> Cell:
    """A header stood on its edge: half a head module high, a head joint on every side."""
    return Cell("rowlock", x, y, S, P / 2)


def shiner(x: Module = ZERO, y: Module = ZERO) -> Cell:
    """A stretcher laid on its edge with its broad face out: half a head module high, a head joint on every side."""
    return Cell("shiner", x, y, P, P / 2)


def joints(bond: Bond, size: BrickSize) -> tuple[float, float]:
    """The bond's own joints in inches, beside and above a unit: the least over its cells."""
    faces = [(cell, cell.face(size)) for cell in bond.cells]
    head = min(cell.width.inches(size) - width for cell, (width, _) in faces)
    bed = min(cell.height.inches(size) - height for cell, (_, height) in faces)
    return head, bed
