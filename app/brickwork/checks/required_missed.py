"""A control line that must be met and is not: the fit that was asked for cannot be."""

from collections.abc import Iterator

from app.brickwork.bond import joints
from app.brickwork.findings import Finding
from app.brickwork.fit import Limits
from app.brickwork.fit_lines import Outcome
from app.brickwork.layout import Layout
from app.lengths import format_length


def check(layout: Layout, unit: str) -> Iterator[Finding]:
    """One finding a required control that is missed: by how much, and what every joint would have to give.

    Lines along the face count where head joints are asked to give.
    """
    head, bed = joints(layout.bond, layout.size)
    along = layout.states.horizontal if layout.panel.fit.heads else ()
    for outcomes, joint in ((layout.states.vertical, bed), (along, head)):
        allowed = Limits(layout.place.give).allowed(joint)
        for outcome in outcomes:
            if outcome.control.matter == "required" and not outcome.is_met:
                control, text = outcome.control, _text(outcome, allowed, unit)
                yield Finding("required-missed", "error", control.x, control.y, text, control.name)


def _text(outcome: Outcome, allowed: float, unit: str) -> str:
    name, off = outcome.control.name, format_length(abs(outcome.off), unit)
    needed = (
        f"joints beside it would have to give {_fine(outcome.needed, unit)} each, {_fine(allowed, unit)} is allowed"
    )
    if not outcome.needed:
        needed = "no joint is asked to give"
    way = f"the nearest that courses is {format_length(outcome.nearest, unit)}"
    return f"{name[0].upper()}{name[1:]} must be met and is {off} off: {needed}; {way}."


def _fine(inches: float, unit: str) -> str:
    """Finer than other lengths, as joints give less than a sixteenth."""
    if unit == "mm":
        return f"{inches * 25.4:.2f} mm"
    return f"{f'{inches:.4f}'.rstrip('0').rstrip('.')} in."
