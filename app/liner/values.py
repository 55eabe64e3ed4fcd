"""Results of the liner room: sheets in laying order, checkpoints of the tape, drift. Inches, face frame if not said."""

from dataclasses import dataclass
from functools import cached_property

from app.brickwork.findings import Finding
from app.liner.cuts import Cut, Ring, cuts


@dataclass(frozen=True)
class Sheet:
    """One liner sheet where it is laid.

    `number` is its place in the laying order; `column` and `row` count sheets from the starting corner within its
    region. `outline` is the full sheet, toothed where the bond is, without its laps; `trim` and `holes` are the rings
    of what is left of it over the brick field, `area` that in square inches. `away` is which way sheets follow on from
    the starting corner in the face frame: 1 right or up, -1 left or down.
    """

    number: int
    mark: str
    region: str
    column: int
    row: int
    is_trimmed: bool
    outline: Ring
    trim: tuple[Ring, ...]
    holes: tuple[Ring, ...]
    area: float
    away: tuple[int, int]

    @cached_property
    def cuts(self) -> tuple[Cut, ...]:
        """Where the sheet is cut, measured from its own starting corner; none for a full sheet."""
        return cuts(self.outline, (*self.trim, *self.holes), self.away) if self.is_trimmed else ()


@dataclass(frozen=True, slots=True)
class SheetType:
    """Sheets of one mould: its size name and bond, whole repeats of the bond along and up.

    `width` and `height` are the steps from sheet to sheet, `area` is one full sheet without its laps, square inches,
    and `placed` how many of them lie on the bed.
    """

    size: str
    bond: str
    repeats: tuple[int, int]
    width: float
    height: float
    area: float
    placed: int


@dataclass(frozen=True, slots=True)
class BareStrip:
    """A part of the brick field, too thin for brick, under which no trim lies; `area` in square inches.

    `on_flange` is the number of the sheet whose flange reaches it, which then stays on there; None where there is no
    liner at all, so that it has to be taped.
    """

    on_flange: int | None
    outline: Ring
    holes: tuple[Ring, ...]
    area: float


@dataclass(frozen=True, slots=True)
class SheetPlan:
    """Every sheet of one panel, in laying order.

    `placed` counts sheets on the bed; how many have to be unpacked for them says the cutting plan. `strips` are the
    parts of the brick field under which no trim lies: places too thin for any brick.
    """

    sheets: tuple[Sheet, ...]
    placed: int
    corner: str
    direction: str
    lap: float
    columns: int
    rows: int
    types: tuple[SheetType, ...]
    strips: tuple[BareStrip, ...] = ()

    @property
    def bare(self) -> float:
        """The part of the brick field without any liner, neither trim nor flange, square inches."""
        return sum(strip.area for strip in self.strips if strip.on_flange is None)


@dataclass(frozen=True, slots=True)
class Checkpoint:
    """A line where the tape is read.

    `nominal` and `held_from` are running dimensions from the tape's hook end, the panel's edge at the starting corner;
    `position` is the same line in the face frame. `expected_low` and `expected_high` are the readings at the lowest
    and highest bed temperature of the day, `bed_low` and `bed_high`, if nothing is corrected, right within `band`
    either way. `control` says what stands there ("jamb W1"), empty for a plain joint line; `held_by` what holds the
    liner at `held_from`.
    """

    mark: str
    axis: str
    nominal: float
    position: float
    held_from: float
    held_by: str
    expected_low: float
    expected_high: float
    band: float
    control: str
    grows_per_degree: float
    reference_temperature: float
    bed_low: float
    bed_high: float

    @property
    def window(self) -> tuple[float, float] | None:
        """Lowest and highest bed temperature at which the uncorrected reading stays in the band; None: always."""
        if self.grows_per_degree == 0:
            return None
        degrees = self.band / self.grows_per_degree
        return self.reference_temperature - degrees, self.reference_temperature + degrees


@dataclass(frozen=True, slots=True)
class LayingWindow:
    """A span of the tape between a line that holds the liner and the next one, or the panel's far edge.

    `start` and `end` are running dimensions, inches; growth runs from `start`, where `held_by` holds. Between `low`
    and `high` degrees of bed temperature all of the span may be laid without correction, as no point then drifts past
    the tolerance; None: at any temperature.
    """

    axis: str
    start: float
    end: float
    held_by: str
    low: float | None
    high: float | None
    ended_by: str = "far edge"


@dataclass(frozen=True, slots=True)
class Drift:
    """How far the liner can move on this panel, and where to read the tape.

    `worst_span` is the length over which free growth at the worst bed temperature uses up the tolerance, None where
    the bed never leaves the reference temperature. `window` is the lowest and highest bed temperature at which one
    whole sheet still stays within the tolerance, None for a panel without sheets or liner that does not grow. `spans`
    say the same of each span between lines that hold the liner, along x first.
    """

    worst_span: float | None
    worst_temperature: float
    checkpoints: tuple[Checkpoint, ...]
    window: tuple[float, float] | None
    findings: tuple[Finding, ...]
    spans: tuple[LayingWindow, ...] = ()
