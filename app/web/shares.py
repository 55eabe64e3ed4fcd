"""Share links: made and revoked in the office, opened at the bed without sign-in."""

from dataclasses import dataclass
from datetime import timedelta

import segno
from fastapi import APIRouter
from starlette.requests import Request
from starlette.responses import HTMLResponse, RedirectResponse, Response

from app.storage import audit, panels, projects, reading, shares, writing
from app.storage.errors import NotFound
from app.storage.shares import Rights, StoredShare
from app.web.answers import answer_problem
from app.web.database import Database, Now
from app.web.forms import Form, chosen, then
from app.web.guests import NOTHING_THERE, set_guest
from app.web.page_links import project_path
from app.web.pages import Page, show
from app.web.person import Person
from app.web.words import at

router = APIRouter(include_in_schema=False)

RIGHTS = {"view": "to look only", "record": "to look and to record"}

LASTING = {"week": 7, "month": 31, "day": 1, "ever": None}
"""Days that a link can last."""


@dataclass(frozen=True, slots=True, kw_only=True)
class NewSharePage(Page):
    """A new link; its address is shown this once."""

    address: str
    qr: str
    opens: str
    may: str
    until: str
    back: str


@dataclass(frozen=True, slots=True, kw_only=True)
class OpeningPage(Page):
    """Leads on to the clean address when another site's page led here, so that the cookie goes along."""

    address: str


@router.post("/projects/{project_id}/shares")
def make(project_id: str, request: Request, database: Database, form: Form, now: Now, person: Person) -> HTMLResponse:
    """A link that opens the bed pages of the project, or of one panel: to look, or to record too; for ever or not."""
    panel_id = form.get("panel") or None
    rights: Rights = "record" if chosen(form, "rights", RIGHTS) == "record" else "view"
    days = LASTING[chosen(form, "lasts", LASTING)]
    expires = None if days is None else now + timedelta(days=days)
    with writing(database) as session:
        project = projects.find(session, project_id)
        mark = panels.find(session, panel_id).mark if panel_id else None
        made = shares.create(session, project_id, panel_id, rights, now, expires)
        audit.note(session, person, f"link made, {RIGHTS[rights]}", f"{project.name} {mark or ''}".strip(), now)
    back = f"/projects/{project_id}"
    address = f"{request.base_url}s/{made.token}"
    page = NewSharePage(
        title="Share link",
        path=project_path(project.id, project.name, "Share link"),
        address=address,
        qr=qr_of(address),
        opens=f"the bed page of panel {mark}" if mark else "the bed pages of every panel",
        may=RIGHTS[rights],
        until=f"until {at(expires)}, or until it is revoked" if expires else "until it is revoked",
        back=f"{back}#share",
    )
    return show("new_share.html", page, 201)


def qr_of(address: str) -> str:
    """A QR code (ISO/IEC 18004) as an image's address; error correction M, so that a dirty print still reads."""
    return str(segno.make(address, error="m", micro=False).svg_data_uri(scale=8, border=4, omitsize=False))


@router.post("/projects/{project_id}/shares/{share_id}/revoke")
def revoke(project_id: str, share_id: str, database: Database, now: Now, person: Person) -> RedirectResponse:
    """Closes a link for good."""
    with writing(database) as session:
        if share_id not in {share.id for share in shares.list_of_project(session, project_id)}:
            raise NotFound("share", share_id)
        shares.revoke(session, share_id, now)
        audit.note(session, person, "link revoked", projects.find(session, project_id).name, now)
    return then(f"/projects/{project_id}#share")


@router.get("/s/{token}")
def open_link(token: str, request: Request, database: Database, now: Now) -> Response:
    """Trades a token for a cookie and a clean address; every token that opens nothing gets the same answer."""
    try:
        with writing(database) as session:
            share = shares.find_by_token(session, token, now)
            shares.mark_used(session, share.id, now)
    except NotFound:
        return answer_problem(request.scope, NOTHING_THERE)
    return set_guest(_led_on(request, _clean_address(share)), request, token)


@router.head("/s/{token}")
def peek(token: str, request: Request, database: Database, now: Now) -> Response:
    """Tells whether a link opens, without opening it."""
    try:
        with reading(database) as session:
            shares.find_by_token(session, token, now)
    except NotFound:
        return answer_problem(request.scope, NOTHING_THERE)
    return Response()


def _clean_address(share: StoredShare) -> str:
    return f"/bed/{share.panel_id}" if share.panel_id else "/bed"


def _led_on(request: Request, address: str) -> Response:
    """A redirect; from another site's page a page of our own, because a strict cookie does not follow its redirects."""
    if request.headers.get("sec-fetch-site") in {"cross-site", "same-site"}:
        return show("opening.html", OpeningPage(title="Bed view", address=address))
    return then(address)
