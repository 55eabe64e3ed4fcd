"""The panel as a person edits it: frozen values, as typed. `check.checked` refuses a wrong one."""

from dataclasses import dataclass, fields
from functools import cached_property

from app.lengths import Length
from app.panel.laying import Laying
from app.panel.shapes import Point, Polygon, Rect, Shape


@dataclass(frozen=True, slots=True)
class Edge:
    """How the brick ends at outline edge `edge` (0 runs from the first point to the second)."""

    edge: int
    treatment: str
    depth: Length | None = None
    margin: Length | None = None


@dataclass(frozen=True, slots=True)
class Side:
    """How the brick ends at one side of a rectangular opening: "left", "right", "head" or "sill", in the face frame."""

    side: str
    treatment: str
    depth: Length | None = None
    margin: Length | None = None


@dataclass(frozen=True, slots=True)
class Opening:
    mark: str
    shape: Shape
    use: str | None = None
    sides: tuple[Side, ...] = ()


@dataclass(frozen=True, slots=True)
class Strip:
    """A rustication line: takes brick away over its width and holds the liner."""

    mark: str
    line: tuple[Point, ...]
    width: Length


@dataclass(frozen=True, slots=True)
class Plate:
    """An embed flush with the face: no brick over it."""

    mark: str
    shape: Rect | Polygon


@dataclass(frozen=True, slots=True)
class Brickwork:
    """Which brick in which bond; `origin` is the lower-left corner of a cell, None for the default corner."""

    size: str
    bond: str
    origin: Point | None = None


@dataclass(frozen=True, slots=True)
class Band:
    """A zone over the whole width: `courses` courses of the field, from field course `course` up."""

    course: int
    courses: int


@dataclass(frozen=True, slots=True)
class Zone:
    """A region with its own brickwork, drawn over the field; later zones win."""

    mark: str
    region: Rect | Polygon | Band
    work: Brickwork


@dataclass(frozen=True, slots=True)
class Fixing:
    """A line along which the liner is held to the bed by glue, tape or nails."""

    line: tuple[Point, ...]
    by: str | None = None


@dataclass(frozen=True, slots=True)
class Matter:
    """How much it matters that brick meets each kind of control line: "required", "wanted" or "free"."""

    heads: str = "wanted"
    sills: str = "wanted"
    jambs: str = "wanted"
    edges: str = "wanted"
    strips: str = "wanted"
    zones: str = "wanted"


@dataclass(frozen=True, slots=True)
class Fit:
    """Whether bed joints (`courses`) and head joints (`heads`) may give so that courses and bricks meet control lines,
    whether `closers` end a course instead of a piece below the least, and what matters."""

    courses: bool = False
    heads: bool = False
    closers: bool = False
    matter: Matter = Matter()


@dataclass(frozen=True, slots=True)
class Accepted:
    """A finding that somebody takes as it is: its code, what it is about, who says so and why."""

    code: str
    about: str
    by: str
    reason: str


@dataclass(frozen=True, slots=True)
class Question:
    """A question to the architect, sent with the submittal."""

    mark: str
    text: str


@dataclass(frozen=True)
class Panel:
    """One concrete panel and its face of brick; face frame, origin lower left, x right, y up.

    `cast_on` is the day on which it is to be cast ("2026-12-01", ISO 8601); `placed`: its brick lies in the
    liner.
    """

    mark: str
    outline: tuple[Point, ...]
    thickness: Length
    field: Brickwork
    base: Length = Length(0)  # noqa: RUF009 - Length is frozen
    margin: Length | None = None
    edges: tuple[Edge, ...] = ()
    openings: tuple[Opening, ...] = ()
    strips: tuple[Strip, ...] = ()
    plates: tuple[Plate, ...] = ()
    zones: tuple[Zone, ...] = ()
    fixings: tuple[Fixing, ...] = ()
    fit: Fit = Fit()
    smallest_cut: Length | None = None
    least_piece: Length | None = None
    released: bool = False
    accepted: tuple[Accepted, ...] = ()
    questions: tuple[Question, ...] = ()
    laying: Laying = Laying()  # noqa: RUF009 - Laying is frozen
    cast_on: str | None = None
    placed: bool = False

    def __hash__(self) -> int:
        return self._hash

    @cached_property
    def _hash(self) -> int:
        """Kept, as many results are looked up by the panel they are of."""
        return hash(tuple(getattr(self, part.name) for part in fields(self)))

    @cached_property
    def outline_inches(self) -> tuple[tuple[float, float], ...]:
        return tuple((x.inches, y.inches) for x, y in self.outline)

    @cached_property
    def width(self) -> float:
        """Width of the bounding box, inches."""
        return max(x for x, _ in self.outline_inches)

    @cached_property
    def height(self) -> float:
        """Height of the bounding box, inches."""
        return max(y for _, y in self.outline_inches)
