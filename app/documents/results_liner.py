"""The liner in a panel's results: every sheet in laying order, and where the tape is read."""

from typing import Any

from app.documents.measure import Measured
from app.liner.cuts import Cut
from app.liner.values import Checkpoint, Drift, Sheet, SheetPlan

Document = dict[str, Any]


def sheets(plan: SheetPlan, measured: Measured) -> Document:
    """Counts of sheets, and the sheets in laying order; outlines in the face frame."""
    return {
        "used": plan.used,
        "placed": plan.placed,
        "area_bound": plan.area_bound,
        "naive": plan.naive,
        "corner": plan.corner,
        "lap": measured.length(plan.lap),
        "list": [_sheet(sheet, measured) for sheet in plan.sheets],
    }


def drift(found: Drift, measured: Measured) -> Document:
    """Checkpoints with what the tape should read; a span or window is null where there is none."""
    window = {"low": found.window[0], "high": found.window[1]} if found.window else None
    return {
        "worst_span": None if found.worst_span is None else measured.length(found.worst_span),
        "worst_temperature": found.worst_temperature,
        "window": window,
        "checkpoints": [_checkpoint(point, measured) for point in found.checkpoints],
    }


def _sheet(sheet: Sheet, measured: Measured) -> Document:
    return {
        "mark": sheet.mark,
        "zone": sheet.region,
        "column": sheet.column,
        "row": sheet.row,
        "trimmed": sheet.is_trimmed,
        "outline": measured.outline(sheet.outline),
        "trim": [measured.outline(ring) for ring in sheet.trim],
        "holes": [measured.outline(ring) for ring in sheet.holes],
        "cuts": [_cut(cut, measured) for cut in sheet.cuts],
        "area": measured.area(sheet.area),
        "from": None,
    }


def _cut(cut: Cut, measured: Measured) -> Document:
    return {"axis": cut.axis, "at": measured.length(cut.at), "line": measured.outline((cut.start, cut.end))}


def _checkpoint(point: Checkpoint, measured: Measured) -> Document:
    return {
        "mark": point.mark,
        "axis": point.axis,
        "nominal": measured.length(point.nominal),
        "position": measured.length(point.position),
        "held_from": measured.length(point.held_from),
        "held_by": point.held_by,
        "expected": {"low": measured.length(point.expected_low), "high": measured.length(point.expected_high)},
        "band": measured.length(point.band),
        "control": point.control,
    }
