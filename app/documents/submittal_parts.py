"""What a submittal can hold, by name: the parts for approval, and those for the shop."""

from collections.abc import Iterable, Mapping

DRAWINGS = "drawings"
SCHEDULES = "schedules"
ORDER = "order"
CUT_SHEETS = "cut-sheets"
GROWTH = "growth"
TAPE = "tape"
SAW = "saw"

PARTS: Mapping[str, str] = {
    DRAWINGS: "Drawings: walls, elevations, bed views, sheet plans, returns",
    SCHEDULES: "Schedules: trimmed pieces, checkpoints, findings",
    ORDER: "Order",
    CUT_SHEETS: "Sheets to cut: stacks of those cut alike, with their pieces and knife cuts",
    GROWTH: "Growth and checkpoints: how far the liner moves over the day",
    TAPE: "Tape tables: every head joint and course from both hooks",
    SAW: "Saw station: bricks to cut, of all panels together",
}
"""Names and titles, in the order of a choice; cover, questions and cautions are always there."""

SETS: Mapping[str, frozenset[str]] = {
    "approval": frozenset({DRAWINGS, SCHEDULES, ORDER}),
    "shop": frozenset({CUT_SHEETS, GROWTH, TAPE, SAW}),
}
"""What goes to the architect, and what goes to those who cut and lay."""

APPROVAL = SETS["approval"]


def parts_named(names: Iterable[str]) -> frozenset[str]:
    """The parts of these names, of sets or of parts; those for approval for none. Raises KeyError for another name."""
    found: set[str] = set()
    for name in names:
        if name not in SETS and name not in PARTS:
            raise KeyError(f"part {name!r}: expected one of {', '.join((*SETS, *PARTS))}")
        found |= SETS.get(name, {name})
    return frozenset(found) or APPROVAL
