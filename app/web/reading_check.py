"""A reading of the tape tried out: the verdict is shown, and nothing is stored."""

from typing import Annotated

from fastapi import APIRouter, Query
from starlette.requests import Request
from starlette.responses import Response

from app.storage import reading
from app.web.database import Database
from app.web.page_links import panel_path
from app.web.pages import Step, show
from app.web.reading_check_view import LONGEST_TRY, MOST_TRIES, ReadingPage, Try, reading_answer, reading_form
from app.workflow.compute import compute
from app.workflow.loading import load_panel

router = APIRouter(prefix="/panels/{panel_id}/drift", include_in_schema=False)

Typed = Annotated[str, Query(max_length=40)]
Before = Annotated[list[Annotated[str, Query(max_length=LONGEST_TRY)]], Query(max_length=MOST_TRIES)]


@router.get("/reading")
def reading_check(
    request: Request,
    panel_id: str,
    database: Database,
    before: Before = [],  # noqa: B006 - read only
    checkpoint: Typed = "",
    value: Annotated[str, Query(alias="reading", max_length=40)] = "",
    bed: Typed = "",
    tape: Typed = "",
) -> Response:
    """The verdict under the form that asked, or a page of its own; 422 with every fault of what cannot be."""
    with reading(database) as session:
        loaded = load_panel(session, panel_id)
    computed = compute(loaded.project, loaded.wall, loaded.panel)
    typed = Try(checkpoint.strip(), value.strip(), bed.strip(), tape.strip())
    form = reading_form(f"/panels/{panel_id}", computed, loaded.project, typed)
    steps = panel_path(loaded, Step("Drift", f"/panels/{panel_id}/drift"), "Check a reading")
    title, heading = f"{loaded.panel.mark}, check a reading", f"Panel {loaded.panel.mark}"
    if not (typed.checkpoint or typed.reading):
        return show("reading_page.html", ReadingPage(title=title, path=steps, heading=heading, check=form))
    tried = [each for text in before if (each := Try.of(text))]
    answer = reading_answer(computed, loaded.project, typed, tried)
    page = ReadingPage(title=title, path=steps, heading=heading, check=form, answer=answer)
    template = "reading_verdict.html" if "hx-request" in request.headers else "reading_page.html"
    return show(template, page, 422 if answer.faults else 200)
