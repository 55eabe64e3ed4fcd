"""Everything a submittal says, as plain values for its template: words are made here, the template only sets them."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any

from app.documents.accepted import open_findings
from app.documents.panel_results import Issue, PanelResults
from app.documents.submittal_asked import accepted_rows, question_rows
from app.documents.submittal_drawings import PALETTE, RETURNS, VIEWS, SheetDrawing, sheet_drawings
from app.documents.submittal_findings import finding_rows
from app.documents.submittal_order import order_rows
from app.documents.submittal_paper import Placed, column_count, sheet_named
from app.documents.submittal_schedules import checkpoint_rows, drift_words, trim_rows
from app.documents.submittal_sheets import sheet_cut_rows
from app.documents.submittal_walls import WallSheet, wall_sheets
from app.documents.submittal_words import (
    COUNTED,
    LIMITS,
    PURPOSE,
    TICK_WORDS,
    about,
    counted,
    counts,
    issue_data,
    size_words,
)
from app.order.rules import Rules
from app.order.takeoff import takeoff
from app.order.values import Takeoff
from app.order.work import PanelWork
from app.panel.project import Project
from app.site.cautions import TASKS, cautions_for

Progress = Callable[[int, int], None]
Document = dict[str, Any]

SHORT_DIGEST = 12
QUESTIONS = "Questions to the architect"


@dataclass(frozen=True, slots=True)
class SubmittalData:
    """The template's values, and its drawings as SVG by file name."""

    values: Document
    drawings: dict[str, str]


def submittal_data(
    project: Project, computed: Sequence[PanelResults], issue: Issue, sheet: str, progress: Progress
) -> SubmittalData:
    """The values of a whole submittal; `progress` hears of each panel drawn, out of one step more than panels.

    Raises KeyError for a sheet that is not known and NoScaleFits, naming the panel, for one too large for it.
    """
    paper, panels = sheet_named(sheet), []
    drawings: dict[str, str] = {}
    for place, results in enumerate(computed):
        drawn = sheet_drawings(results, project.length_unit, paper, counted(results))
        panels.append(_panel(results, f"p{place}", drawn, project))
        drawings |= {_file(f"p{place}", drawing): drawing.svg for drawing in drawn}
        progress(place + 1, len(computed) + 1)
    walls = wall_sheets(computed, project.length_unit, paper, PALETTE)
    drawings |= {_wall_file(place): wall.svg for place, wall in enumerate(walls)}
    values = _project(project, computed, issue) | {
        "general": _general(walls, any(one.panel.questions for one in computed)),
        "walls": [_wall(wall, place, project) for place, wall in enumerate(walls)],
        "questions": question_rows(computed),
        "paper": {"width": paper.width, "height": paper.height, "columns": column_count(paper)},
        "panels": panels,
        "drawing-names": _drawing_names(panels),
        "order": order_rows(_order(project, computed)),
        "cautions": _cautions(),
    }
    return SubmittalData(values, drawings)


def _order(project: Project, computed: Sequence[PanelResults]) -> Takeoff:
    """The order of all panels together: overage and packs are of the sum, never summed."""
    works = [PanelWork(one.layout, one.plan, one.cutting, project.blend) for one in computed]
    return takeoff(works, Rules(project.order, project.liner, project.blend, project.length_unit))


def _project(project: Project, computed: Sequence[PanelResults], issue: Issue) -> Document:
    return {
        "title": f"{project.name}, submittal, revision {issue.revision}",
        "title-of-set": f"Submittal for approval: thin-brick face of {_panels_in_words(computed)}",
        "project": project.name,
        "purpose": PURPOSE,
        "about": about(project, issue),
        "limits": list(LIMITS),
        "issue": issue_data(issue),
        "totals": _totals(computed),
        "order-words": f"Counted from the layouts of {_panels_in_words(computed)}",
    }


def _general(walls: Sequence[WallSheet], has_questions: bool) -> list[dict[str, str]]:
    """The sheets of the whole project, in their order."""
    sheets = {"cover": "Cover and index", "panels": "Panel schedule"}
    sheets |= {_wall_id(place): f"Wall {wall.mark}" for place, wall in enumerate(walls)}
    sheets |= {"questions": QUESTIONS} if has_questions else {}
    sheets |= {"order": "Order", "cautions": "Cautions"}
    return [{"title": title, "id": name} for name, title in sheets.items()]


def _wall(wall: WallSheet, place: int, project: Project) -> Document:
    return {
        "id": _wall_id(place),
        "title": f"Wall {wall.mark}",
        "supplement": f"Wall elevation, faces seen from outside; scale {wall.scale}; {project.name}",
        "file": _wall_file(place),
        "alt": wall.alt,
        **_at(wall.at),
        "facts": [{"label": label, "value": value} for label, value in wall.facts],
    }


def _wall_id(place: int) -> str:
    return f"wall{place}"


def _wall_file(place: int) -> str:
    return f"{_wall_id(place)}.svg"


def _at(at: Placed) -> dict[str, float]:
    return {"x": at.x, "y": at.y, "width": at.width, "height": at.height}


def _drawing_names(panels: Sequence[Document]) -> list[str]:
    """Columns of the index: returns have one only where some panel has a sheet of them."""
    has_returns = any(drawing["name"] == RETURNS for panel in panels for drawing in panel["drawings"])
    return [*VIEWS, *([RETURNS] if has_returns else [])]


def _panels_in_words(computed: Sequence[PanelResults]) -> str:
    walls = len({results.wall.mark for results in computed})
    return f"{_number(len(computed), 'panel')} in {_number(walls, 'wall')}"


def _number(count: int, thing: str) -> str:
    return f"{count} {thing}" if count == 1 else f"{count} {thing}s"


def _totals(computed: Sequence[PanelResults]) -> dict[str, str]:
    each = [counts(results) for results in computed]
    return {name: str(sum(int(number[name]) for number in each)) for name in COUNTED}


def _panel(results: PanelResults, name: str, drawn: Sequence[SheetDrawing], project: Project) -> Document:
    panel, unit, layout = results.panel, project.length_unit, results.layout
    supplement = f"{project.name}, wall {results.wall.mark}"
    return {
        "id": name,
        "mark": panel.mark,
        "wall": results.wall.mark,
        "supplement": supplement,
        "size": size_words(panel.width, panel.height, unit),
        "brick": f"{panel.field.size}, {panel.field.bond}",
        "scale": drawn[0].scale,
        "counts": counts(results),
        "counted": counted(results),
        "revision": results.revision,
        "digest-short": results.digest.removeprefix("sha256:")[:SHORT_DIGEST],
        "tick": TICK_WORDS[unit],
        "drawings": [_drawing(drawing, name, supplement) for drawing in drawn],
        "trims": trim_rows(layout, unit),
        "sheet-cuts": sheet_cut_rows(results.plan, unit),
        "checkpoints": checkpoint_rows(results.drift, unit),
        "drift-words": drift_words(results.drift, project),
        "findings": finding_rows(open_findings(results.findings, panel.accepted), unit),
        "accepted": accepted_rows(panel.accepted, results.findings),
    }


def _drawing(drawing: SheetDrawing, panel: str, supplement: str) -> Document:
    return {
        "id": f"{panel}-{drawing.name}",
        "name": drawing.name,
        "file": _file(panel, drawing),
        "title": drawing.title,
        "supplement": f"{drawing.words}; scale {drawing.scale}; {supplement}",
        "alt": drawing.alt,
        **_at(drawing.at),
    }


def _file(panel: str, drawing: SheetDrawing) -> str:
    return f"{panel}-{drawing.name}.svg"


def _cautions() -> list[Document]:
    return [
        {
            "task": task.capitalize(),
            "rows": [
                {"hazard": one.hazard, "text": one.text, "decides": one.decides, "source": one.source}
                for one in cautions_for(task)
            ],
        }
        for task in TASKS
    ]
