"""A problem as an answer: `application/problem+json` for scripts, a page for people."""

from dataclasses import dataclass

from starlette.responses import JSONResponse, Response
from starlette.types import Scope

from app.web.pages import Page, Step, show
from app.web.problems import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class ProblemPage(Page):
    """What went wrong, in words, with every fault found."""

    problem: Problem


class ProblemResponse(JSONResponse):
    media_type = "application/problem+json"


def answer_problem(scope: Scope, found: Problem) -> Response:
    """The answer to a request that failed."""
    headers = {"cache-control": "no-store", **found.headers}
    if is_for_scripts(scope):
        return ProblemResponse(found.document(), found.kind.status, headers)
    page = ProblemPage(title=found.kind.title, path=(Step("Projects", "/"),), problem=found)
    return show(_template(scope), page, found.kind.status, found.headers)


def is_for_scripts(scope: Scope) -> bool:
    path = str(scope["path"])
    return path.startswith("/api/") or path == "/healthz"


def _template(scope: Scope) -> str:
    if str(scope["path"]).startswith("/bed/"):
        return "bed_closed.html"
    is_part = any(name == b"hx-request" for name, _ in scope["headers"])
    return "problem_part.html" if is_part else "problem.html"
