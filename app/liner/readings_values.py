"""A reading of the tape at a checkpoint, what lies ahead of it, and the verdict on it."""

from dataclasses import dataclass
from typing import Literal

Kind = Literal["hold", "adjust", "relay", "measure"]

KINDS: dict[Kind, str] = {"hold": "Hold", "adjust": "Adjust", "relay": "Relay", "measure": "Measure the bed"}
"""Verdicts in words."""


@dataclass(frozen=True, slots=True)
class Reading:
    """What somebody read at the checkpoint `mark`: `value` in inches as the tape shows it.

    The bed's and the tape's temperature are in the project's unit; None where nobody took it.
    """

    mark: str
    value: float
    bed_temperature: float | None = None
    tape_temperature: float | None = None


@dataclass(frozen=True, slots=True)
class Ahead:
    """What lies between a checkpoint and the next control line along its axis, inches.

    `control` names that line ("jamb W1", or "fixing 1" where the liner is held before it), `mark` is its checkpoint's
    ("" for a fixing), and `nominal` its running dimension; "" and the checkpoint's own where nothing lies ahead.
    `joints` are the whole joints between, each
    nominally `joint` wide, that may yet be squeezed or stretched by so much: the liner's joint give and the range of
    the joint, less what the fit has used. `grows_per_degree` is the growth of the liner between. `before` is the last
    checkpoint before this one, "" for the hook.
    """

    control: str
    mark: str
    nominal: float
    joints: int
    joint: float
    squeeze: float
    stretch: float
    grows_per_degree: float
    before: str

    @property
    def line(self) -> str:
        """The line ahead in words: by its mark, which a drawing shows; "" where nothing lies ahead."""
        return f"control line {self.mark}" if self.mark else self.control


@dataclass(frozen=True, slots=True)
class Spread:
    """A change of the next `joints` joints together by `ticks` ticks of `tick` inches: squeezed above zero, stretched
    below."""

    joints: int
    ticks: int
    tick: float

    @property
    def total(self) -> float:
        """Inches by which the joints are squeezed together; below zero stretched."""
        return self.ticks * self.tick

    @property
    def each(self) -> tuple[int, ...]:
        """Ticks of every joint in laying order, mixed evenly; their sum is `ticks`."""
        sign, ticks, count = (-1 if self.ticks < 0 else 1), abs(self.ticks), self.joints
        return tuple(sign * (ticks * (k + 1) // count - ticks * k // count) for k in range(count))

    @property
    def sizes(self) -> tuple[tuple[int, int], ...]:
        """How many joints change by how many ticks (never below zero), the most joints first; none by nothing."""
        less, more = divmod(abs(self.ticks), self.joints)
        counts = ((self.joints - more, less), (more, less + 1))
        return tuple(sorted(((n, ticks) for n, ticks in counts if n and ticks), key=lambda one: -one[0]))


@dataclass(frozen=True, slots=True)
class Verdict:
    """What a reading means and what to do; inches.

    `error` is the reading, right by the steel tape's own growth, less `nominal`: above zero the liner is long.
    `explained` is the part of it that the bed's temperature makes and `rest` what is left; None without a bed
    temperature. `coming` is what the liner ahead will add up to the next control line at that temperature; without one
    the middle of what it may add over the day, `doubt` more or less. `spread` is there for `adjust` only. `said` tells
    what was read, `instruction` what to do.
    """

    mark: str
    axis: str
    nominal: float
    kind: Kind
    error: float
    explained: float | None
    rest: float | None
    coming: float
    doubt: float
    band: float
    spread: Spread | None
    said: str
    instruction: str
