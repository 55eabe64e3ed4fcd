"""Who opened a share link, and what that lets them see."""

from dataclasses import dataclass
from datetime import datetime
from typing import Annotated

from fastapi import Depends
from starlette.requests import Request
from starlette.responses import Response

from app.storage import panels, reading, shares
from app.storage.errors import NotFound
from app.web.database import Database, Now
from app.web.problems import Failure, problem

NOTHING_THERE = problem("not-found", "Check the link, or ask the office for a new one.")
"""One answer for a wrong, a revoked and an expired link, and for what a link does not open."""


@dataclass(frozen=True, slots=True)
class Viewer:
    """Who looks at bed pages: the office (`project_id` None), or a link to a project or one panel."""

    project_id: str | None = None
    panel_id: str | None = None
    may_record: bool = True
    share_id: str | None = None

    @property
    def is_guest(self) -> bool:
        return self.project_id is not None

    def may_see(self, project_id: str, panel_id: str) -> bool:
        return self.project_id in (None, project_id) and self.panel_id in (None, panel_id)


def cookie_name(request: Request) -> str:
    """The prefix makes browsers refuse a cookie that came over an open line; they grant it on https only."""
    return "__Host-bed" if request.url.scheme == "https" else "bed"


def set_guest(response: Response, request: Request, token: str) -> Response:
    is_secure = request.url.scheme == "https"
    response.set_cookie(cookie_name(request), token, path="/", secure=is_secure, httponly=True, samesite="strict")
    response.headers["cache-control"] = "no-store"
    return response


def clear_guest(response: Response, request: Request) -> Response:
    is_secure = request.url.scheme == "https"
    response.delete_cookie(cookie_name(request), path="/", secure=is_secure, httponly=True, samesite="strict")
    return response


def viewer_of(request: Request, database: Database, now: Now) -> Viewer:
    """Who has signed in, the office on this machine, or a guest by the link's cookie.

    Raises Failure 404 for a link that is closed.
    """
    account, token = getattr(request.state, "account", None), request.cookies.get(cookie_name(request))
    if account is not None or token is None:
        return Viewer(may_record=account is None or account.role != "viewer")
    return _guest(database, token, now)


def _guest(database: Database, token: str, moment: datetime) -> Viewer:
    try:
        with reading(database) as session:
            share = shares.find_by_token(session, token, moment)
            if share.panel_id is not None:
                panels.find(session, share.panel_id)
    except NotFound as error:
        raise Failure(NOTHING_THERE) from error
    return Viewer(share.project_id, share.panel_id, share.rights == "record", share.id)


BedViewer = Annotated[Viewer, Depends(viewer_of)]
