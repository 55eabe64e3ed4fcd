"""Results of the order room: what to buy, line by line, and what is short."""

from dataclasses import dataclass

from app.panel.delivery import Delivery

TOPICS = ("brick", "corner units", "liner", "fixings and sundries", "for information")
"""What lines are about, in the order in which they follow; what is for information is not bought."""

AREAS = ("sq ft", "m2")


@dataclass(frozen=True, slots=True)
class Pack:
    """Full packs to order: "carton" or "pallet", how many, and how many pieces one holds."""

    name: str
    count: int
    holds: int


@dataclass(frozen=True, slots=True)
class Line:
    """One line of the order: net from the layouts, overage on top, `order` both together, in `unit`.

    `item` names the line for good: deliveries refer to it. `kind` is the brick's, or "corner left" or "corner right";
    it, `size` and `colour` are empty where a line has none. `packs` are the packs that hold at least `order`, empty
    for what is not packed. `note` says how the line was counted, `reason` where the overage comes from, in words.
    `weight` is that of `order` in `weight_unit` ("lb" or "kg"), None where it is not known. `topic` is one of `TOPICS`.
    """

    item: str
    kind: str
    size: str
    net: float
    overage: float
    order: float
    unit: str
    packs: tuple[Pack, ...] = ()
    note: str = ""
    colour: str = ""
    reason: str = ""
    weight: float | None = None
    weight_unit: str = ""
    topic: str = TOPICS[0]

    @property
    def is_bought(self) -> bool:
        """Whether it comes in pieces or lengths that are delivered: not what is told for information, nor an area."""
        return self.topic != TOPICS[-1] and self.unit not in AREAS


@dataclass(frozen=True, slots=True)
class Takeoff:
    """Everything to order for some panels; no lines for no panels."""

    lines: tuple[Line, ...]

    @property
    def bought(self) -> tuple[Line, ...]:
        """The lines of what is delivered."""
        return tuple(line for line in self.lines if line.is_bought)

    @property
    def weight(self) -> float:
        """Of all that is ordered and whose weight is known, in the lines' unit of weight."""
        return sum(line.weight for line in self.lines if line.weight is not None)


@dataclass(frozen=True, slots=True)
class Casting:
    """The day on which one panel is cast, "" for none; placed: its brick is in the liner."""

    wall: str
    mark: str
    cast_on: str
    is_placed: bool


@dataclass(frozen=True, slots=True)
class DayShort:
    """One item up to and with one casting day: still needed with overage, and what is short of it."""

    day: str
    needed: float
    short: float


@dataclass(frozen=True, slots=True)
class Stock:
    """One item in the yard: `on_hand` is what was delivered less what placed panels took, never below 0.

    `needed` and `short` are those of the next casting day; `days` has it and all that follow, "" (no day) last.
    `unnoted` is what placed panels took beyond everything that was noted as delivered.
    """

    item: str
    unit: str
    delivered: float
    used: float
    on_hand: float
    unnoted: float
    needed: float
    short: float
    days: tuple[DayShort, ...]


@dataclass(frozen=True, slots=True)
class ShortList:
    """What is short for the next casting day: the day ("" for none named), its panels' marks, and every item.

    `day` is None where every panel is placed. `unknown` are items delivered that are no line of the order,
    `expected` deliveries of later days, which are not on hand yet.
    """

    day: str | None
    panels: tuple[str, ...]
    stock: tuple[Stock, ...]
    unknown: tuple[str, ...] = ()
    expected: tuple[Delivery, ...] = ()
