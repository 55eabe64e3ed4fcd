"""What a submittal says of one panel, and of one drawing, as plain values for its template."""

from collections.abc import Sequence
from typing import Any

from app.documents.accepted import open_findings
from app.documents.panel_results import PanelResults
from app.documents.submittal_asked import accepted_rows
from app.documents.submittal_drawings import SheetDrawing
from app.documents.submittal_findings import finding_rows
from app.documents.submittal_paper import Placed
from app.documents.submittal_parts import SCHEDULES
from app.documents.submittal_schedules import checkpoint_rows, drift_words, trim_rows
from app.documents.submittal_shop import PlotDrawing
from app.documents.submittal_shop_tables import shop_tables
from app.documents.submittal_words import TICK_WORDS, counted, counts, in_words, size_words
from app.panel.project import Project

Document = dict[str, Any]

SHORT_DIGEST = 12


def panel_document(
    results: PanelResults,
    name: str,
    drawn: Sequence[SheetDrawing],
    project: Project,
    parts: frozenset[str],
) -> Document:
    """One panel under a name that no other has: its numbers, drawings and tables, as the parts ask for them."""
    panel, unit = results.panel, project.length_unit
    supplement = f"{project.name}, wall {results.wall.mark}"
    return {
        "id": name,
        "mark": panel.mark,
        "wall": results.wall.mark,
        "supplement": supplement,
        "size": size_words(panel.width, panel.height, unit),
        "brick": f"{panel.field.size}, {panel.field.bond}",
        "scale": drawn[0].scale if drawn else "–",
        "counts": in_words(counts(results)),
        "counted": counted(results),
        "revision": results.revision,
        "digest-short": results.digest.removeprefix("sha256:")[:SHORT_DIGEST],
        "tick": TICK_WORDS[unit],
        "drawings": [drawing_document(drawing, name, supplement) for drawing in drawn],
        "schedules": _schedules(results, project) if SCHEDULES in parts else {},
        "shop": shop_tables(results, project, parts),
    }


def _schedules(results: PanelResults, project: Project) -> Document:
    accepted, unit = results.panel.accepted, project.length_unit
    return {
        "trims": trim_rows(results.layout, unit),
        "checkpoints": checkpoint_rows(results.drift, unit),
        "drift-words": drift_words(results.drift, project),
        "findings": finding_rows(open_findings(results.findings, accepted), unit),
        "accepted": accepted_rows(accepted, results.findings),
    }


def drawing_document(drawing: SheetDrawing, panel: str, supplement: str) -> Document:
    """One drawing sheet; `panel` is the name under which its file stands."""
    return {
        "id": f"{panel}-{drawing.name}",
        "name": drawing.name,
        "file": drawing_file(panel, drawing),
        "title": drawing.title,
        "supplement": f"{drawing.words}; scale {drawing.scale}; {supplement}",
        "alt": drawing.alt,
        **at_document(drawing.at),
    }


def plot_document(plot: PlotDrawing, panel: str, supplement: str) -> Document:
    """One growth plot."""
    return {
        "file": plot_file(panel, plot),
        "caption": plot.caption,
        "alt": f"Growth over running dimension. {plot.caption}. {supplement}.",
        "width": plot.width,
        "height": plot.height,
    }


def plot_file(panel: str, plot: PlotDrawing) -> str:
    """The file of a plot among the template's."""
    return f"{panel}-growth-{plot.axis}.svg"


def drawing_file(panel: str, drawing: SheetDrawing) -> str:
    """The file of a drawing among the template's."""
    return f"{panel}-{drawing.name}.svg"


def at_document(at: Placed) -> dict[str, float]:
    """Where a drawing lies, mm."""
    return {"x": at.x, "y": at.y, "width": at.width, "height": at.height}
