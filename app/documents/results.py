"""One panel's results as the JSON that the command and the interface for scripts answer with."""

from typing import Any

from app.brickwork.blend import colours_of
from app.brickwork.blend_finding import blend_findings
from app.brickwork.checks import findings
from app.brickwork.findings import Finding
from app.brickwork.layout import Layout
from app.documents import results_face, results_fit, results_liner, results_returns, results_saw
from app.documents.accepted import acceptance_of
from app.documents.digest import panel_digest
from app.documents.measure import Measured
from app.liner.bare_findings import bare_findings
from app.liner.fixing_advice import fixing_advice
from app.liner.offcut_values import CuttingPlan
from app.liner.values import Drift, SheetPlan
from app.order.line_words import to_hundredth
from app.order.saw_values import SawList
from app.order.values import Line, Takeoff
from app.panel.blend import Blend
from app.panel.project import Project, Wall
from app.panel.values import Panel

Document = dict[str, Any]

NO_BLEND = Blend()


def layout_result(
    project: Project,
    wall: Wall,
    panel: Panel,
    layout: Layout,
    plan: SheetPlan,
    cutting: CuttingPlan,
    drift: Drift,
    takeoff: Takeoff,
    saw: SawList,
) -> Document:
    """Everything computed for one panel, lengths in the project's unit; what is not built yet is absent."""
    measured = Measured(project.length_unit)
    return {
        "panel": panel.mark,
        "length_unit": project.length_unit,
        "digest": panel_digest(project, wall, panel),
        "area": results_face.area(layout, measured),
        "counts": results_face.counts(layout),
        "courses": results_face.courses(layout, measured),
        "units": results_face.units(layout, measured) | results_face.colours(layout, project.blend),
        "trims": results_face.trims(layout, measured),
        "left_out": results_face.left_out(layout, measured),
        "fit": results_fit.fit(layout, measured),
        "returns": results_returns.return_edges(layout, measured),
        "sheets": results_liner.sheets(plan, cutting, measured),
        "drift": results_liner.drift(drift, measured, fixing_advice(layout, drift, project.liner, project.day)),
        "saw": results_saw.saw(saw, measured),
        "takeoff": takeoff_result(takeoff),
        "findings": [
            _finding(finding, panel, measured)
            for finding in all_findings(layout, plan, drift, project.length_unit, project.blend)
        ],
    }


def all_findings(
    layout: Layout, plan: SheetPlan, drift: Drift, unit: str, blend: Blend = NO_BLEND
) -> tuple[Finding, ...]:
    """What is found on a face, then about its liner, then about its colours; lengths in words in `unit`."""
    mixed = blend_findings(layout, blend, colours_of(layout, blend))
    return (*findings(layout, unit), *bare_findings(plan, unit), *drift.findings, *mixed)


def takeoff_result(takeoff: Takeoff) -> Document:
    """The lines of an order."""
    return {"lines": [_line(line) for line in takeoff.lines]}


def _line(line: Line) -> Document:
    return {
        "item": line.item,
        "kind": line.kind,
        "size": line.size,
        "net": to_hundredth(line.net),
        "overage": to_hundredth(line.overage),
        "order": to_hundredth(line.order),
        "unit": line.unit,
        "packs": [{"name": pack.name, "count": pack.count, "holds": pack.holds} for pack in line.packs],
        "note": line.note,
        "colour": line.colour,
        "reason": line.reason,
        "weight": None if line.weight is None else round(line.weight, 2),
        "weight_unit": line.weight_unit,
        "topic": line.topic,
    }


def _finding(finding: Finding, panel: Panel, measured: Measured) -> Document:
    accepted = acceptance_of(finding, panel.accepted)
    return {
        "code": finding.code,
        "severity": finding.severity,
        "where": {"x": measured.length(finding.x), "y": measured.length(finding.y)},
        "text": finding.text,
        "about": finding.about,
        "accepted": {"by": accepted.by, "reason": accepted.reason} if accepted else None,
    }
