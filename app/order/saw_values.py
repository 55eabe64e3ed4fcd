"""Values of the saw list: pieces to cut, how bricks are cut up for them, how many bricks that takes. All inches."""

from collections.abc import Mapping
from dataclasses import dataclass, field

import shapely

Point = tuple[float, float]
Brick = tuple[str, str, str]
"""What bricks are ordered as: size, kind and colour, "" where all brick is of one colour."""


def brick_words(size: str, kind: str, colour: str) -> str:
    """A brick as a list names it: `modular stretcher`, `modular stretcher, red`."""
    return f"{size} {kind}, {colour}" if colour else f"{size} {kind}"


@dataclass(frozen=True, slots=True)
class Seat:
    """Where pieces of a group go: panel, zone ("" for the field), course of that brickwork, how many of them there."""

    panel: str
    zone: str
    course: int
    count: int


@dataclass(frozen=True, slots=True)
class SawPiece:
    """Equal pieces: cut from a `kind` of `size` whose face is `whole` long and high, along the unit's own axes.

    `length` and `height` are to the saw's step. `has_factory_end` says that one end stays as the maker left it.
    `outline` is what is left of the whole unit, from its own lower-left corner with its length across; a plain box
    for `length` and `height`. `colour` is "" where all brick is of one colour.
    """

    size: str
    kind: str
    cut: str
    length: float
    height: float
    count: int
    has_factory_end: bool
    whole: tuple[float, float]
    outline: tuple[Point, ...]
    seats: tuple[Seat, ...]
    colour: str = ""

    @property
    def brick(self) -> str:
        """What it is cut from, in words."""
        return brick_words(self.size, self.kind, self.colour)

    @property
    def middle(self) -> Point:
        """A point on the piece, its middle where that is on it, from the whole unit's lower-left corner."""
        polygon = shapely.Polygon(self.outline)
        inside = polygon.centroid if polygon.contains(polygon.centroid) else polygon.point_on_surface()
        return inside.x, inside.y


@dataclass(frozen=True, slots=True)
class Cut:
    """One piece of a pattern."""

    length: float
    has_factory_end: bool


@dataclass(frozen=True, slots=True)
class Pattern:
    """How `times` bricks are cut across: pieces with a factory end at the brick's ends, the rest and what is left over
    between them. `left_over` is without kerfs."""

    times: int
    size: str
    kind: str
    whole: tuple[float, float]
    pieces: tuple[Cut, ...]
    left_over: float
    colour: str = ""

    @property
    def brick(self) -> str:
        """What is cut, in words."""
        return brick_words(self.size, self.kind, self.colour)


@dataclass(frozen=True, slots=True)
class CornerCut:
    """Equal corner units to cut: the legs and height they get, outside, to the corner; `hand` as they are ordered.

    `cut` is the class of the cut through the face leg, "length" too where only the return leg is shortened.
    """

    size: str
    hand: str
    cut: str
    face_leg: float
    return_leg: float
    height: float
    count: int
    seats: tuple[Seat, ...]
    colour: str = ""


@dataclass(frozen=True, slots=True)
class SawList:
    """Everything to cut for some panels; all zero and empty for no panels.

    `bricks` are the flat bricks that are cut up, `bound` is proven to be their least number, `first_fit` what cutting
    the longest first takes, `bricks_by` the same bricks by size, kind and colour as they are ordered (rips,
    notches and skew cuts are in it with a brick each; corner units are not). `pieces` are square cuts to length.
    `rubs` are whole bricks of which a corner smaller than the kerf is rubbed off by hand: no bricks for the saw.
    """

    kerf: float = 0.0
    bricks: int = 0
    bound: int = 0
    first_fit: int = 0
    bricks_by: Mapping[Brick, int] = field(default_factory=dict)
    patterns: tuple[Pattern, ...] = ()
    pieces: tuple[SawPiece, ...] = ()
    rips: tuple[SawPiece, ...] = ()
    notches: tuple[SawPiece, ...] = ()
    skews: tuple[SawPiece, ...] = ()
    rubs: tuple[SawPiece, ...] = ()
    corners: tuple[CornerCut, ...] = ()

    @property
    def is_proven(self) -> bool:
        """Whether no way of cutting takes fewer bricks."""
        return self.bricks == self.bound

    @property
    def groups(self) -> tuple[SawPiece, ...]:
        """Every group of pieces that are cut from flat bricks."""
        return (*self.pieces, *self.rips, *self.notches, *self.skews)

    @property
    def rubbed(self) -> int:
        """How many bricks are rubbed off by hand."""
        return sum(piece.count for piece in self.rubs)

    @property
    def flat_pieces(self) -> int:
        """How many pieces are cut from flat bricks: the bricks it would take without sharing any."""
        return sum(piece.count for piece in self.groups)
