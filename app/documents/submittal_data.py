"""Everything a submittal says, as plain values for its template: words are made here, the template only sets them."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any
from zlib import compress

from app.documents.panel_results import Issue, PanelResults
from app.documents.submittal_asked import question_rows
from app.documents.submittal_drawings import (
    PALETTE,
    RETURN_DETAILS,
    RETURNS,
    VIEWS,
    saw_sheets,
    sheet_drawings,
)
from app.documents.submittal_order import blend_words, order_rows
from app.documents.submittal_panels import (
    at_document,
    drawing_document,
    drawing_file,
    panel_document,
    plot_document,
    plot_file,
)
from app.documents.submittal_paper import column_count, plot_width, sheet_named
from app.documents.submittal_parts import CUT_SHEETS, DRAWINGS, GROWTH, ORDER, SAW, SCHEDULES, TAPE
from app.documents.submittal_shop import CUT_SHEETS_NAME, SAW_NAME, growth_drawings
from app.documents.submittal_walls import WallSheet, wall_sheets
from app.documents.submittal_words import (
    COUNTED,
    LIMITS,
    PURPOSE,
    about,
    counted,
    counts,
    in_words,
    issue_data,
)
from app.order.rules import Rules
from app.order.saw import saw_list
from app.order.takeoff import takeoff
from app.order.work import FaceWork, PanelWork
from app.panel.project import Project
from app.site.cautions import TASKS, cautions_for

Document = dict[str, Any]

QUESTIONS = "Questions to the architect"

TABLES = {
    "-schedules": ("Schedules", {SCHEDULES}),
    "-growth": ("Growth", {GROWTH}),
    "-tables": ("Shop tables", {CUT_SHEETS, TAPE}),
}
"""Columns of the index for sheets of tables, and the parts that have them."""


@dataclass(frozen=True, slots=True)
class SubmittalData:
    """What all sheets say, each panel's own values, and all drawings as packed SVG by file name."""

    common: Document
    panels: tuple[Document, ...]
    drawings: Mapping[str, bytes]


def submittal_data(
    project: Project,
    computed: Sequence[PanelResults],
    issue: Issue,
    sheet: str,
    parts: frozenset[str],
    drawn: Callable[[], None],
) -> SubmittalData:
    """The values of a whole submittal of these parts; `drawn` is called after each panel.

    Raises KeyError for a sheet that is not known and NoScaleFits, naming the panel, for one too large for it.
    """
    paper, panels = sheet_named(sheet), list[Document]()
    drawings: dict[str, bytes] = {}
    for place, results in enumerate(computed):
        made = sheet_drawings(results, project, paper, counted(results), parts)
        panels.append(panel_document(results, f"p{place}", made, project, parts))
        drawings |= {drawing_file(f"p{place}", drawing): _packed(drawing.svg) for drawing in made}
        plots = growth_drawings(results, project, plot_width(paper)) if GROWTH in parts else ()
        panels[-1]["plots"] = [plot_document(plot, f"p{place}", panels[-1]["supplement"]) for plot in plots]
        drawings |= {plot_file(f"p{place}", plot): _packed(plot.svg) for plot in plots}
        drawn()
    walls = wall_sheets(computed, project.length_unit, paper, PALETTE) if DRAWINGS in parts else ()
    drawings |= {_wall_file(place): _packed(wall.svg) for place, wall in enumerate(walls)}
    works = [PanelWork(FaceWork(one.layout, project.blend), one.plan, one.cutting) for one in computed]
    cut = saw_list([work.face for work in works], Rules.of(project)) if parts & {ORDER, SAW} else None
    saw = saw_sheets(cut, project, paper) if cut and SAW in parts else ()
    drawings |= {drawing_file("all", drawing): _packed(drawing.svg) for drawing in saw}
    has_questions = any(one.panel.questions for one in computed)
    common = _project(project, computed, issue) | {
        "general": _general(walls, has_questions, parts, bool(saw)),
        "walls": [_wall(wall, place, project) for place, wall in enumerate(walls)],
        "saw": [drawing_document(drawing, "all", project.name) for drawing in saw],
        "questions": question_rows(computed),
        "paper": {"width": paper.width, "height": paper.height, "columns": column_count(paper)},
        "parts": sorted(parts),
        "drawing-names": _drawing_names(panels),
        "table-names": [{"title": title, "id": name} for name, (title, of) in TABLES.items() if of & parts],
        "order": order_rows(takeoff(works, cut, Rules.of(project))) if cut and ORDER in parts else [],
        "blend-words": blend_words(project.blend),
        "cautions": _cautions(),
    }
    return SubmittalData(common, tuple(panels), drawings)


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


def _general(
    walls: Sequence[WallSheet], has_questions: bool, parts: frozenset[str], has_saw: bool
) -> list[dict[str, str]]:
    """The sheets of the whole project, in their order."""
    sheets = {"cover": "Cover and index", "panels": "Panel schedule"}
    sheets |= {_wall_id(place): f"Wall {wall.mark}" for place, wall in enumerate(walls)}
    sheets |= {"questions": QUESTIONS} if has_questions else {}
    sheets |= {"order": "Order"} if ORDER in parts else {}
    sheets |= {f"all-{SAW_NAME}": SAW_NAME} if has_saw else {}
    sheets |= {"cautions": "Cautions"}
    return [{"title": title, "id": name} for name, title in sheets.items()]


def _wall(wall: WallSheet, place: int, project: Project) -> Document:
    return {
        "id": _wall_id(place),
        "title": f"Wall {wall.mark}",
        "supplement": f"Wall elevation, faces seen from outside; scale {wall.scale}; {project.name}",
        "file": _wall_file(place),
        "alt": wall.alt,
        **at_document(wall.at),
        "facts": [{"label": label, "value": value} for label, value in wall.facts],
        "rows": wall.rows,
        "table-y": wall.table_y,
    }


def _wall_id(place: int) -> str:
    return f"wall{place}"


def _wall_file(place: int) -> str:
    return f"{_wall_id(place)}.svg"


def _drawing_names(panels: Sequence[Document]) -> list[str]:
    """Columns of the index, in the order of the sheets: those that some panel has; of several alike the first."""
    names = [drawing["name"] for panel in panels for drawing in panel["drawings"]]
    known = (*VIEWS, RETURNS, RETURN_DETAILS, CUT_SHEETS_NAME)
    return [name for name in known if name in names]


def _panels_in_words(computed: Sequence[PanelResults]) -> str:
    walls = len({results.wall.mark for results in computed})
    return f"{_number(len(computed), 'panel')} in {_number(walls, 'wall')}"


def _number(count: int, thing: str) -> str:
    return f"{count:,} {thing}" if count == 1 else f"{count:,} {thing}s"


def _totals(computed: Sequence[PanelResults]) -> dict[str, str]:
    each = [counts(results) for results in computed]
    return in_words({name: sum(number[name] for number in each) for name in COUNTED})


def _packed(svg: str) -> bytes:
    return compress(svg.encode(), 1)


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
