"""What a crew does with the sheets of one panel: laps, knife cuts, stacks, hold-downs, edge pieces. Inches, face frame
if not said; sheets by their numbers."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from math import ceil

from app.liner.cuts import Cut, Ring

MOST_IN_STACK = 6
"""Sheets of about 21 mil that one pass of a knife cuts through: common practice."""

Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Lap:
    """Where sheet `by` lies on the flange of sheet `over`, which was laid before it.

    `edge` is which far edge of `over` that is: "along" its courses, or "up" from the starting corner. `rings` are the
    strips within the brick field, `area` theirs together, `middle` a point on the largest.
    """

    over: int
    by: int
    edge: str
    rings: tuple[Ring, ...]
    area: float
    middle: Point


@dataclass(frozen=True, slots=True)
class Counted:
    """A distance from a sheet's starting corner as one counts it: whole pockets passed, and inches past the far edge
    of the last; from the sheet's own edge where none is passed."""

    pockets: int
    past: float


@dataclass(frozen=True, slots=True)
class KnifeCut:
    """One straight cut as a knife meets it, in the nominal sheet as it comes from its pack.

    `along` counts pockets of the sheet's first course, `up` counts courses: one of them with one entry for an upright
    or level cut, both with start and end for a skew cut, both empty where pockets do not lie along the face. `ridges`
    are middles of the joint ridges crossed, inches from the cut's start; `in_ridge` is how much of it runs in ridges,
    and `beside` how far to move an upright or level cut away from the starting corner (negative: towards it) so that
    it runs on the floor; None where it does, or no move helps.
    """

    cut: Cut
    along: tuple[Counted, ...]
    up: tuple[Counted, ...]
    ridges: tuple[float, ...]
    in_ridge: float
    beside: float | None


@dataclass(frozen=True, slots=True)
class Stack:
    """Equal trims, to be cut together; `mark` is "A" for the most frequent, `cuts` are those of each of `sheets`.

    `outline` is the full sheet and `rings` what is left of it, both from its starting corner, away from it and up from
    it, joints nominal; `area` is that of one trim as it lies.
    """

    mark: str
    size: str
    bond: str
    sheets: tuple[int, ...]
    outline: Ring
    rings: tuple[Ring, ...]
    cuts: tuple[KnifeCut, ...]
    area: float

    @property
    def count(self) -> int:
        return len(self.sheets)

    @property
    def passes(self) -> int:
        """How often it is cut with at most `MOST_IN_STACK` sheets at a time."""
        return ceil(self.count / MOST_IN_STACK)


@dataclass(frozen=True, slots=True)
class HoldDown:
    """Pieces of brick that hold a loose sheet down, laid first: indices into `layout.units`, and a point on each."""

    sheet: int
    units: tuple[int, ...]
    points: tuple[Point, ...]


@dataclass(frozen=True, slots=True)
class Fix:
    """A sheet to fix to the bed `when` there is "wind" or a large "swing" of temperature, and why, in words."""

    sheet: int
    when: str
    reason: str


@dataclass(frozen=True, slots=True)
class EdgeRun:
    """One length of finishing edge piece; `kind` is "upright", "level" or "skew"."""

    kind: str
    start: Point
    end: Point
    length: float


@dataclass(frozen=True)
class EdgePieces:
    """Where courses stop in the open, and how much finishing edge piece that takes."""

    runs: tuple[EdgeRun, ...]

    @cached_property
    def by_kind(self) -> dict[str, float]:
        """Length of each kind; 0 for one that there is not."""
        return {kind: sum(run.length for run in self.runs if run.kind == kind) for kind in ("upright", "level", "skew")}

    @property
    def length(self) -> float:
        """All of it together."""
        return sum(self.by_kind.values())


@dataclass(frozen=True, slots=True)
class SheetWork:
    """All of it for one panel; `knife` has the cuts of each trimmed sheet by its number."""

    laps: tuple[Lap, ...]
    knife: Mapping[int, tuple[KnifeCut, ...]]
    stacks: tuple[Stack, ...]
    hold_downs: tuple[HoldDown, ...]
    fixes: tuple[Fix, ...]
    edge_pieces: EdgePieces
