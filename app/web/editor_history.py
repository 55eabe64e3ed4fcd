"""The history of a panel: every change that was saved, and two of its states laid over each other."""

from dataclasses import dataclass
from itertools import islice
from typing import Annotated

from fastapi import APIRouter, Query
from starlette.responses import HTMLResponse

from app.drawing.scales import Scale
from app.drawing.views.compare import AROUND, compare
from app.panel.things import changes
from app.panel.things_in_words import in_words
from app.storage import panels, reading
from app.web.database import Database
from app.web.editor_view import address_of
from app.web.inline_drawing import InlineDrawing, inline_drawing
from app.web.pages import Page, Step, show
from app.web.person import Person
from app.workflow.compute import Computed, compute
from app.workflow.editing import HistoryRow, history
from app.workflow.loading import load_panel, with_document
from app.workflow.panel_log import document_at

router = APIRouter(prefix="/panels/{panel_id}", include_in_schema=False)

A_PAGE = 50
PAPER_MM = (235.0, 165.0)


@dataclass(frozen=True, slots=True)
class Line:
    """One saved change; `undone` is whether it is taken back by now."""

    revision: int
    at: str
    person: str
    label: str
    undone: bool


@dataclass(frozen=True, slots=True)
class HistoryPart:
    address: str
    person: str
    lines: tuple[Line, ...]
    older: int | None


@dataclass(frozen=True, slots=True)
class Figure:
    words: str
    was: str
    now: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ComparePage(Page):
    """Two states: the drawing, the differences in words, and the figures."""

    mark: str
    address: str
    earlier: int
    later: int
    drawing: InlineDrawing
    differences: tuple[str, ...]
    figures: tuple[Figure, ...]


@router.get("/history")
def log(
    panel_id: str, database: Database, person: Person, before: Annotated[int | None, Query(ge=1)] = None
) -> HTMLResponse:
    """The changes, newest first, fifty at a time; `before` a revision."""
    with reading(database) as session:
        rows = history(session, panel_id)
    older = [row for row in rows if before is None or row.revision < before]
    lines = tuple(map(_line, islice(older, A_PAGE)))
    more = lines[-1].revision if len(older) > A_PAGE else None
    return show("editor_history_list.html", HistoryPart(address_of(panel_id), person, lines, more))


def _line(row: HistoryRow) -> Line:
    label = row.label if row.kind == "edit" else f"{row.kind.capitalize()}: {row.label}"
    return Line(row.revision, f"{row.at.astimezone():%Y-%m-%d %H:%M:%S}", row.person, label, row.undone)


Revision = Annotated[int, Query(ge=1)]


@router.get("/compare")
def compared(panel_id: str, database: Database, earlier: Revision = 1, later: Revision | None = None) -> HTMLResponse:
    """The panel as two revisions left it, whichever is named first; a revision that is not there yet is the present."""
    with reading(database) as session:
        now = load_panel(session, panel_id)
        stored = panels.find(session, panel_id)
        asked = (earlier, now.revision if later is None else later)
        first, last = (min(one, now.revision) for one in sorted(asked))
        was, becomes = (with_document(now, document_at(session, stored, one)) for one in (first, last))
    before, after = (compute(one.project, one.wall, one.panel) for one in (was, becomes))
    return show(
        "compare.html",
        ComparePage(
            title=f"{now.panel.mark}, rev {first} and rev {last}",
            path=(
                Step("Projects", "/"),
                Step(now.project.name, f"/projects/{now.project_id}"),
                Step(f"{now.wall.mark} / {now.panel.mark}", address_of(panel_id)),
                Step("Compare"),
            ),
            mark=now.panel.mark,
            address=address_of(panel_id),
            earlier=first,
            later=last,
            drawing=_drawing(before, after),
            differences=tuple(in_words(changes(was.document, becomes.document))),
            figures=_figures(before, after),
        ),
    )


def _drawing(before: Computed, after: Computed) -> InlineDrawing:
    panel = after.layout.panel
    room = (PAPER_MM[0] - AROUND.left - AROUND.right, PAPER_MM[1] - AROUND.bottom - AROUND.top)
    scale = Scale(max(panel.width * 25.4 / room[0], panel.height * 25.4 / room[1]), "to fit")
    drawn = compare(before.layout, after.layout, scale=scale, unit=after.unit)
    return inline_drawing(drawn, f"Panel {panel.mark}: what differs, as it was broken, as it is heavy")


def _figures(before: Computed, after: Computed) -> tuple[Figure, ...]:
    pairs = (
        ("whole", before.layout.whole, after.layout.whole),
        ("trimmed", len(before.layout.trims), len(after.layout.trims)),
        ("small", before.layout.small, after.layout.small),
        ("sheets", before.placed, after.placed),
    )
    return tuple(Figure(words, f"{was:,}", f"{now:,}") for words, was, now in pairs)
