"""What a crew does with the sheets of one panel: laps, cuts, stacks, hold-downs, tape, edge pieces. Inches, face frame
if not said; sheets by their numbers."""

from dataclasses import dataclass
from functools import cached_property
from math import ceil, dist

from app.liner.arcs import Arc
from app.liner.cuts import Cut, Ring

MOST_IN_STACK = 6
"""Sheets of about 21 mil that one pass of a knife cuts through: common practice."""

Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Lap:
    """Where sheet `by` lies on the flange of sheet `over`, which was laid before it.

    `edge` is which far edge of `over` that is: "along" its courses, or "up" from the starting corner. `rings` are the
    strips within the brick field, `area` theirs together, `middle` a point on the largest, `seam` the edge that the
    two share, in runs.
    """

    over: int
    by: int
    edge: str
    rings: tuple[Ring, ...]
    area: float
    middle: Point
    seam: tuple[Ring, ...]


@dataclass(frozen=True, slots=True)
class TapedSeam:
    """Where sheet `by` butts sheet `over`, whose flange was cut away there, and over what length."""

    over: int
    by: int
    length: float


@dataclass(frozen=True, slots=True)
class Counted:
    """A distance from a sheet's starting corner as one counts it: whole pockets of the first course passed, and inches
    past the far edge of the last; where none is passed, from the near edge of the first, before it if negative.
    `joint` is how wide the joint is there."""

    pockets: int
    past: float
    joint: float = 0.0


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

    @property
    def length(self) -> float:
        """From end to end, inches."""
        return dist(self.cut.start, self.cut.end)


@dataclass(frozen=True, slots=True)
class KnifeLine:
    """Cuts that are told and made as one: a "cut" by itself, the "teeth" along pockets, or the chords of an "arc".

    Of teeth `axis` is "x" where they run upright and "y" where level; then one of `along` and `up` counts where they
    end, the other from and to. Of an arc both count its `ends`. Nothing else has counts.
    """

    kind: str
    cuts: tuple[KnifeCut, ...]
    axis: str = ""
    along: tuple[Counted, ...] = ()
    up: tuple[Counted, ...] = ()
    arc: Arc | None = None

    @property
    def length(self) -> float:
        """All of it, inches."""
        return sum(knife.length for knife in self.cuts)

    @property
    def middle(self) -> KnifeCut:
        """The cut at which its number stands: the longest, of an arc the one half way."""
        return self.cuts[len(self.cuts) // 2] if self.arc else max(self.cuts, key=lambda knife: knife.length)


@dataclass(frozen=True, slots=True)
class Piece:
    """What is cut out of one place of every sheet of a stack: `numbers` are the laid sheets that it becomes, one for
    each unpacked sheet; `rings` its outlines and holes, `area` in square inches."""

    numbers: tuple[int, ...]
    rings: tuple[Ring, ...]
    area: float


@dataclass(frozen=True, slots=True)
class Stack:
    """Unpacked sheets that are cut alike, to be cut together; `mark` is "A" for the most frequent.

    `owners` are the laid sheets for which they are fetched. `outline` is the full sheet and `pieces` all that is cut
    from it, the largest first; the rest is waste. `cuts` are in the order in which a knife makes them, `lines` the same
    as they are told. All from the sheet's starting corner, away from it and up from it, joints nominal.
    """

    mark: str
    size: str
    bond: str
    owners: tuple[int, ...]
    outline: Ring
    pieces: tuple[Piece, ...]
    cuts: tuple[KnifeCut, ...]
    lines: tuple[KnifeLine, ...]

    @property
    def count(self) -> int:
        """How many sheets are unpacked for it."""
        return len(self.owners)

    @property
    def passes(self) -> int:
        """How often it is cut with at most `MOST_IN_STACK` sheets at a time."""
        return ceil(self.count / MOST_IN_STACK)

    @property
    def sheets(self) -> tuple[int, ...]:
        """The laid sheets that come out of it, in laying order."""
        return tuple(sorted(number for piece in self.pieces for number in piece.numbers))


@dataclass(frozen=True, slots=True)
class CutList:
    """All sheets to unpack: `stacks` to cut, and the laid sheets that are `whole`."""

    stacks: tuple[Stack, ...]
    whole: tuple[int, ...]

    @property
    def used(self) -> int:
        """How many sheets that are."""
        return len(self.whole) + sum(stack.count for stack in self.stacks)


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
    """All of it for one panel.

    `free_flanges` are whole sheets with a far edge on which no later sheet lies, `taped` the seams that butt.
    """

    laps: tuple[Lap, ...]
    cut_list: CutList
    hold_downs: tuple[HoldDown, ...]
    fixes: tuple[Fix, ...]
    free_flanges: tuple[int, ...]
    taped: tuple[TapedSeam, ...]
    edge_pieces: EdgePieces

    @property
    def stacks(self) -> tuple[Stack, ...]:
        """Sheets to cut."""
        return self.cut_list.stacks

    @property
    def taped_length(self) -> float:
        """All seams that butt, inches."""
        return sum(seam.length for seam in self.taped)
