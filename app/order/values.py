"""Results of the order room: what to buy, line by line."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Pack:
    """Full packs to order: "carton" or "pallet", how many, and how many pieces one holds."""

    name: str
    count: int
    holds: int


@dataclass(frozen=True, slots=True)
class Line:
    """One line of the order: net from the layouts, overage on top, `order` both together, in `unit`.

    `kind` is the brick's, or "corner left" or "corner right"; it and `size` are empty where a line has none. `packs`
    are the packs that hold at least `order`, empty for what is not packed. `note` says how the line was counted.
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


@dataclass(frozen=True, slots=True)
class Takeoff:
    """Everything to order for some panels; no lines for no panels."""

    lines: tuple[Line, ...]
