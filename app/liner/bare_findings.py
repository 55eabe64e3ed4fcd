"""Strips of the brick field under which no trim lies, each told with its place, its size and what to do there."""

from collections.abc import Iterator

import numpy as np
import shapely

from app.brickwork.findings import Finding
from app.lengths import format_length
from app.liner.values import BareStrip, SheetPlan

_LEAST = 1 / 64
"""Inches; through a narrower crack no concrete runs (common practice)."""


_DIGITS = 4
"""Decimals of an inch; a strip's sides are out by less than that, as it is drawn in and let out by the tolerance."""


def bare_findings(plan: SheetPlan, unit: str) -> Iterator[Finding]:
    """A warning `liner-bare` for each strip without liner, which has to be taped before concrete runs through, and a
    note `liner-flange` where a flange has to stay on; lengths in words in `unit`. None where trims cover the field.
    """
    for strip in plan.strips:
        middle = shapely.point_on_surface(shapely.Polygon(strip.outline, strip.holes))
        width, length = _sides(strip)
        if width < _LEAST:
            continue
        size = f"{format_length(width, unit, 64)} wide and {format_length(length, unit)} long"
        if strip.on_flange is None:
            text = f"No liner reaches a strip {size} at the edge of its brickwork. Tape it, or concrete runs through."
            yield Finding("liner-bare", "warning", middle.x, middle.y, text)
        else:
            text = f"A strip {size} has only the flange of sheet {strip.on_flange} under it. Leave the flange on there."
            yield Finding("liner-flange", "note", middle.x, middle.y, text)


def _sides(strip: BareStrip) -> tuple[float, float]:
    """Width and length of the narrowest box around a strip, inches."""
    box = shapely.get_coordinates(shapely.minimum_rotated_rectangle(shapely.Polygon(strip.outline)))
    one, two = np.hypot(*(box[1:3] - box[:2]).T).tolist()
    return round(min(one, two), _DIGITS), round(max(one, two), _DIGITS)
