"""The page that every problem's `type` points to."""

from dataclasses import dataclass

from fastapi import APIRouter
from starlette.responses import HTMLResponse

from app.web.pages import Page, Step, show
from app.web.problems import KINDS, Kind

router = APIRouter(include_in_schema=False)


@dataclass(frozen=True, slots=True, kw_only=True)
class ProblemListPage(Page):
    kinds: tuple[Kind, ...]


@router.get("/problems")
def problem_list() -> HTMLResponse:
    path = (Step("Projects", "/"), Step("Problems"))
    return show("problem_list.html", ProblemListPage(title="Problems", path=path, kinds=tuple(KINDS.values())))
