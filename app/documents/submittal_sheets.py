"""Where the knife goes: the cuts of the trimmed liner sheets, sheets cut alike in one row."""

from app.documents.submittal_schedules import TICK
from app.drawing.lettering import lettered
from app.liner.values import Sheet, SheetPlan

Row = dict[str, str]

WAYS = {"x": "from the side", "y": "from the foot"}
"""Measured as the sheet lies on the bed, from the corner where its laying starts."""


def sheet_cut_rows(plan: SheetPlan, unit: str) -> list[Row]:
    """Sheet numbers and their cuts to the tick, in laying order; no row where none is cut. `unit` is "in" or "mm"."""
    alike: dict[str, list[str]] = {}
    for sheet in plan.sheets:
        if sheet.is_trimmed:
            alike.setdefault(_cuts(sheet, unit), []).append(sheet.mark)
    return [{"sheets": ", ".join(marks), "cuts": words} for words, marks in alike.items()]


def _cuts(sheet: Sheet, unit: str) -> str:
    """Each straight line of the knife once: teeth make many short cuts along one line."""
    tick = TICK[unit]
    parts = []
    for axis, words in WAYS.items():
        ticks = sorted({round(cut.at / tick) for cut in sheet.cuts if cut.axis == axis})
        if ticks:
            parts.append(f"{words} {', '.join(lettered(at * tick, unit) for at in ticks)}")
    slanted = sum(cut.axis == "skew" for cut in sheet.cuts)
    return "; ".join([*parts, *([f"{slanted} slanted, as drawn"] if slanted else [])])
