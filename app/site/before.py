"""The list before concrete: the last moment at which a mistake is cheap. The engineer's list governs."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Item:
    """One thing to look at, and why it matters (common practice); `name` never changes, records bear it."""

    name: str
    words: str
    why: str


@dataclass(frozen=True, slots=True)
class Signer:
    """Who signs; two people, so that nobody passes his own work."""

    name: str
    words: str


BEFORE: tuple[Item, ...] = (
    Item("keyed-back", "Keyed back up", "Every brick lies face down, its keyed back up: a smooth back does not hold."),
    Item("corners-held", "Corners held", "Corner units sit tight in their pockets and cannot float or turn."),
    Item(
        "no-steel",
        "No steel near the face",
        "No nail, tie wire or chair touches liner or brick: it rusts through.",
    ),
    Item("openings", "Openings formed", "Blockouts stand where the drawing has them, braced, sealed to the liner."),
    Item("joints-clean", "Joints clean", "No chip, water or sawdust in the joints; loose sheets lie flat again."),
    Item(
        "steel-embeds",
        "Steel and embeds as by the engineer",
        "Cover, bars, inserts and plates: by the engineer of record.",
    ),
)

SIGNS: tuple[Signer, ...] = (
    Signer("foreman", "Foreman"),
    Signer("second", "Inspector or second person"),
)
