"""Which sheets to fix to the bed when it is windy, or when the temperature swings far. See `fixes`."""

from collections.abc import Iterator, Sequence
from math import isinf

import numpy as np

from app.lengths import format_length
from app.liner.growth import free_span, worst_temperature
from app.liner.values import Sheet, SheetPlan
from app.liner.work_values import Fix, Lap
from app.panel.project import Day, Liner
from app.panel.rings import ring_area
from app.panel.tolerance import TOLERANCE

SMALL_SHARE = 0.25
"""A trim below this share of a full sheet lies too light and too short of laps to stay by itself: common practice."""


def fixes(
    plan: SheetPlan, laps: Sequence[Lap], liner: Liner, day: Day, length_unit: str = "in", temperature_unit: str = "F"
) -> tuple[Fix, ...]:
    """Sheets to fix in "wind", then those to fix in a "swing", each in laying order, with the reason in words.

    Wind lifts a sheet at a far edge that no later sheet lies over, and small trims. A swing moves a sheet past the
    tolerance where it is longer than the length that uses it up at the day's worst bed temperature. None for no sheets.
    """
    wind = (Fix(sheet.number, "wind", words) for sheet, words in _windy(plan, laps))
    worst = worst_temperature(day, liner)
    span = free_span(liner, worst)
    if isinf(span):
        return tuple(wind)
    why = f"liner moves {format_length(liner.tolerance, length_unit)} over {format_length(span, length_unit)}"
    said = f"; at {worst:g} {temperature_unit} {why}"
    swing = (
        Fix(sheet.number, "swing", f"{format_length(length, length_unit)} long{said}")
        for sheet, length in ((sheet, _longest(sheet)) for sheet in plan.sheets)
        if length > span + TOLERANCE
    )
    return (*wind, *swing)


def free_flanges(plan: SheetPlan, laps: Sequence[Lap]) -> tuple[int, ...]:
    """Whole sheets with a far edge on which no later sheet lies, so that its flange is cut off; none without laps."""
    free = _free_edges(plan, laps)
    whole = () if plan.lap <= 0 else plan.sheets
    return tuple(sheet.number for sheet in whole if not sheet.is_trimmed and free[sheet.number])


def _free_edges(plan: SheetPlan, laps: Sequence[Lap]) -> dict[int, list[str]]:
    covered = {(lap.over, lap.edge) for lap in laps}
    edges = ("along", "up")
    return {s.number: [edge for edge in edges if (s.number, edge) not in covered] for s in plan.sheets}


def _windy(plan: SheetPlan, laps: Sequence[Lap]) -> Iterator[tuple[Sheet, str]]:
    free = _free_edges(plan, laps)
    for sheet in plan.sheets:
        share = sheet.area / ring_area(np.array(sheet.outline))
        words = _free(free[sheet.number])
        words += [f"only {share:.0%} of a sheet"] if share < SMALL_SHARE else []
        if words:
            yield sheet, "; ".join(words)


def _free(edges: list[str]) -> list[str]:
    if len(edges) == 2:
        return ["no later sheet lies over it"]
    return [f"no later sheet lies over its far {'end' if edge == 'along' else 'side'}" for edge in edges]


def _longest(sheet: Sheet) -> float:
    points = np.array([point for ring in sheet.trim for point in ring])
    return float(np.ptp(points, axis=0).max())
