"""A control line that must be met and is not: the fit that was asked for cannot be."""

from collections.abc import Iterator

from app.brickwork.findings import Finding
from app.brickwork.fit_lines import Outcome
from app.brickwork.layout import Layout
from app.lengths import format_length


def check(layout: Layout, unit: str) -> Iterator[Finding]:
    """One finding a required control that is missed: by how much, and what every joint would have to give.

    Lines along the face count where head joints are asked to give.
    """
    along = layout.states.horizontal if layout.panel.fit.heads else ()
    for outcome in (*layout.states.vertical, *along):
        if outcome.control.matter == "required" and not outcome.is_met:
            control, text = outcome.control, _text(layout, outcome, unit)
            yield Finding("required-missed", "error", control.x, control.y, text, control.name)


def _text(layout: Layout, outcome: Outcome, unit: str) -> str:
    control, (off, nearest) = outcome.control, (outcome.off, outcome.nearest)
    give = layout.place.give
    needed = f"joints beside it would have to give {_fine(outcome.needed)} in. each, {_fine(give)} in. is allowed"
    way = f"the nearest that courses is {format_length(nearest, unit)}"
    return f"{control.name} must be met and is {format_length(abs(off), unit)} off: {needed}; {way}."


def _fine(inches: float) -> str:
    return f"{inches:.4f}".rstrip("0").rstrip(".") or "0"
