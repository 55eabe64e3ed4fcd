"""Advice on one panel, worked out when it is looked at and never with an edit, and the questions for the architect."""

from dataclasses import dataclass
from functools import lru_cache

from fastapi import APIRouter
from starlette.responses import Response

from app.brickwork.advice import Advice, advise
from app.brickwork.layout import Layout
from app.brickwork.own_bonds import known_bonds
from app.brickwork.place import Place
from app.brickwork.wall import is_continuous, place_in
from app.documents.project_file import sizes_of
from app.panel.project import Project, Wall
from app.panel.values import Panel
from app.storage import reading
from app.web.database import Database
from app.web.editor_view import address_of
from app.web.pages import show
from app.workflow.compute import compute
from app.workflow.loading import load_panel

router = APIRouter(prefix="/panels/{panel_id}", include_in_schema=False)

NO_BRICK = "No brick is laid, so there is nothing to better."
ALL_MET = "Nothing to better: every control is met and no brick is cut."
NO_BETTER = "Nothing to better: no move that was tried saves a cut or a small piece."


@dataclass(frozen=True, slots=True)
class AdviceRow:
    """One idea: what moves and what that saves, its place in inches with y up, and its edit as a form posts it."""

    text: str
    effect: str
    x: float
    y: float
    values: tuple[tuple[str, str], ...]
    question: str
    asked: bool


@dataclass(frozen=True, slots=True)
class QuestionRow:
    mark: str
    text: str


@dataclass(frozen=True, slots=True)
class AdvicePart:
    """The ideas, the best first; `nothing` says why there is none."""

    address: str
    revision: int
    rows: tuple[AdviceRow, ...]
    nothing: str
    questions: tuple[QuestionRow, ...]


@router.get("/advice")
def advice(panel_id: str, database: Database) -> Response:
    """What would make the face better, and what is asked already."""
    with reading(database) as session:
        loaded = load_panel(session, panel_id)
    project, panel = loaded.project, loaded.panel
    asked = {question.text for question in panel.questions}
    rows = tuple(_row(one, asked) for one in _advised(project, loaded.wall, panel))
    nothing = "" if rows else _nothing(compute(project, loaded.wall, panel).layout)
    questions = tuple(QuestionRow(question.mark, question.text) for question in panel.questions)
    return show("editor_advice.html", AdvicePart(address_of(panel_id), loaded.revision, rows, nothing, questions))


@lru_cache(maxsize=8)
def _advised(project: Project, wall: Wall, panel: Panel) -> tuple[Advice, ...]:
    """Kept while somebody opens and closes the list."""
    layout = compute(project, wall, panel).layout
    sizes, bonds, give = sizes_of(project), known_bonds(project), project.liner.joint_give.inches

    def place_of(changed: Panel) -> Place:
        return place_in(wall, changed, sizes, give, bonds)

    return advise(layout, sizes, bonds, project.length_unit, place_of=place_of, is_shared=_shares_courses(wall, panel))


def _shares_courses(wall: Wall, panel: Panel) -> bool:
    """Whether another panel of the wall takes its courses from it, with bricks of the same size."""
    others = (one for one in wall.panels if one.mark != panel.mark)
    return any(is_continuous(one) and one.field.size == panel.field.size for one in others)


def _row(one: Advice, asked: set[str]) -> AdviceRow:
    values = (("edit", one.edit), *one.values)
    return AdviceRow(
        one.text, one.effect, round(one.x, 4), round(one.y, 4), values, one.question, one.question in asked
    )


def _nothing(layout: Layout) -> str:
    if layout.field.is_empty:
        return NO_BRICK
    return NO_BETTER if len(layout.trims) else ALL_MET
