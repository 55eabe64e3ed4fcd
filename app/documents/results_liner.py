"""The liner in a panel's results: every sheet in laying order, and where the tape is read."""

from collections.abc import Sequence
from typing import Any

from app.documents.measure import Measured
from app.liner.cuts import Cut
from app.liner.fixing_advice import FixingAdvice, SpanAdvice
from app.liner.offcut_values import CutSheet, CuttingPlan, Taken
from app.liner.values import Checkpoint, Drift, LayingWindow, Sheet, SheetPlan

Document = dict[str, Any]


def sheets(plan: SheetPlan, cutting: CuttingPlan, measured: Measured) -> Document:
    """Counts of sheets, the sheets in laying order with outlines in the face frame, and those that give several trims,
    with outlines in the unpacked sheet's own frame."""
    marks = {sheet.number: sheet.mark for sheet in plan.sheets}
    return {
        "used": cutting.used,
        "placed": cutting.placed,
        "area_bound": cutting.area_bound,
        "bound": cutting.bound,
        "proven": cutting.is_proven,
        "naive": cutting.naive,
        "corner": plan.corner,
        "lap": measured.length(plan.lap),
        "list": [_sheet(sheet, cutting, marks, measured) for sheet in plan.sheets],
        "cut_sheets": [_cut_sheet(sheet, marks, measured) for sheet in cutting.sheets if sheet.is_shared],
    }


def drift(found: Drift, measured: Measured, advice: Sequence[SpanAdvice] = ()) -> Document:
    """Checkpoints with what the tape should read, and the bed temperatures at which what lies between lines that hold
    the liner may be laid; a span or window is null where there is none. Advice is on fixing lines, face frame."""
    window = {"low": found.window[0], "high": found.window[1]} if found.window else None
    return {
        "worst_span": None if found.worst_span is None else measured.length(found.worst_span),
        "worst_temperature": found.worst_temperature,
        "window": window,
        "checkpoints": [_checkpoint(point, measured) for point in found.checkpoints],
        "windows": [_window(span, measured) for span in found.spans],
        "fixing_advice": [_advice(one, measured) for one in advice],
    }


def _window(span: LayingWindow, measured: Measured) -> Document:
    return {
        "axis": span.axis,
        "from": measured.length(span.start),
        "to": measured.length(span.end),
        "held_by": span.held_by,
        "low": span.low,
        "high": span.high,
    }


def _advice(advice: SpanAdvice, measured: Measured) -> Document:
    """Growth without sign, at the day's worst temperature: as it is, and with all lines."""
    return {
        **_window(advice.span, measured),
        "temperature": advice.temperature,
        "growth": measured.length(advice.grows),
        "least": measured.length(advice.least),
        "lines": [_fixing(line, measured) for line in advice.lines],
    }


def _fixing(line: FixingAdvice, measured: Measured) -> Document:
    """Where a fixing line goes, and what it saves by itself at one checkpoint or, where `mark` is "", at its span's
    end."""
    return {
        "position": measured.length(line.position),
        "nominal": measured.length(line.running),
        "line": measured.outline((x.inches, y.inches) for x, y in line.line),
        "mark": line.mark,
        "at": measured.length(line.at),
        "growth": {"before": measured.length(line.before), "after": measured.length(line.after)},
    }


def _sheet(sheet: Sheet, cutting: CuttingPlan, marks: dict[int, str], measured: Measured) -> Document:
    """`from` is the mark of the sheet out of whose unpacked sheet this one is cut, null for a sheet with its own."""
    source = cutting.source_of(sheet.number)
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
        "from": None if source is None else marks[source],
        "steps": list(cutting.taken(sheet.number).steps),
    }


def _cut_sheet(sheet: CutSheet, marks: dict[int, str], measured: Measured) -> Document:
    """An unpacked sheet that gives more than one trim; all of them, its owner's own first."""
    return {
        "owner": marks[sheet.owner],
        "size": sheet.size,
        "bond": sheet.bond,
        "taken": [_taken(taken, marks, measured) for taken in sheet.taken],
    }


def _taken(taken: Taken, marks: dict[int, str], measured: Measured) -> Document:
    return {
        "mark": marks[taken.number],
        "steps": list(taken.steps),
        "rings": [measured.outline(ring) for ring in taken.rings],
        "area": measured.area(taken.area),
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
        "window": None if point.window is None else {"low": point.window[0], "high": point.window[1]},
    }
