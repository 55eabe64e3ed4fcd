"""Who comes in where a sign-in is needed: every request is looked up in the table of roles before its route runs."""

import hmac
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime
from re import Pattern
from typing import Any, cast
from urllib.parse import parse_qs, quote

from starlette.concurrency import run_in_threadpool
from starlette.datastructures import Headers
from starlette.requests import Request
from starlette.responses import RedirectResponse
from starlette.types import ASGIApp, Receive, Scope, Send

from app.storage import accounts, reading, writing
from app.storage.accounts import USED_EVERY, StoredAccount, StoredSignIn
from app.web.answers import answer_problem, is_for_scripts
from app.web.form_token import VISITOR, Visitor, form_token
from app.web.guests import cookie_name as guest_cookie
from app.web.problems import problem
from app.web.roles import BY_LINK, OPEN, roles_of
from app.web.security import SAFE_METHODS, is_json
from app.workflow.opening import Connections

SIGN_IN = "/sign-in"


@dataclass(frozen=True, slots=True)
class KnownRoute:
    methods: frozenset[str]
    pattern: Pattern[str]
    path: str


def cookie_name(scheme: str) -> str:
    """The prefix makes browsers refuse a cookie that came over an open line; they grant it on https only."""
    return "__Host-account" if scheme == "https" else "account"


class Gate:
    """Lets a request through to its route, or answers why not."""

    def __init__(self, app: ASGIApp, routes: Iterable[Any]) -> None:
        self.app = app
        self.routes = tuple(KnownRoute(frozenset(one.methods), one.path_regex, one.path) for one in routes)

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] != "http" or self._is_open(route := self._route(scope)):
            await self.app(scope, receive, send)
            return
        request = Request(scope)
        token = request.cookies.get(cookie_name(request.url.scheme), "")
        found = await run_in_threadpool(_session, request.app.state.engine, token) if token else None
        if found is None:
            await self._without_account(request, route)(scope, receive, send)
            return
        account, session = found
        if why := _why_not(request, account, route, token):
            await answer_problem(scope, problem("forbidden", why))(scope, receive, send)
            return
        request.state.account, request.state.session = account, session
        held = VISITOR.set(Visitor(account.name, form_token(token)))
        try:
            await self.app(scope, receive, send)
        finally:
            VISITOR.reset(held)

    def _route(self, scope: Scope) -> KnownRoute | None:
        path, method = scope["path"], scope["method"]
        return next((one for one in self.routes if method in one.methods and one.pattern.match(path)), None)

    def _is_open(self, route: KnownRoute | None) -> bool:
        return route is not None and bool(_names(route) & OPEN)

    def _without_account(self, request: Request, route: KnownRoute | None) -> ASGIApp:
        if route and _names(route) & BY_LINK and guest_cookie(request) in request.cookies:
            return self.app
        if request.method == "GET" and not is_for_scripts(request.scope) and "hx-request" not in request.headers:
            return RedirectResponse(f"{SIGN_IN}?then={quote(request.url.path)}", 303)
        return answer_problem(request.scope, problem("sign-in", "Sign in first; nothing was done."))


def _names(route: KnownRoute) -> frozenset[str]:
    return frozenset(f"{method} {route.path}" for method in route.methods)


def _session(engine: Connections, token: str) -> tuple[StoredAccount, StoredSignIn] | None:
    now = datetime.now(UTC)
    with reading(engine) as session:
        found = accounts.by_token(session, token, now)
    if found and now - found[1].last_used_at > USED_EVERY:
        with writing(engine) as session:
            accounts.mark_used(session, found[1].id, now)
    return found


def _why_not(request: Request, account: StoredAccount, route: KnownRoute | None, token: str) -> str:
    if route is not None and account.role not in roles_of(route.methods, route.path):
        return f"{account.name} is {account.role} here, and this is not for that role."
    if request.method not in SAFE_METHODS and not _brings_token(request, token):
        return "This form was not made for this sign-in: load the page again."
    return ""


def _brings_token(request: Request, token: str) -> bool:
    """JSON cannot be sent by a form of another site; everything else must bring what its page was given."""
    headers = Headers(scope=request.scope)
    if is_json(headers.get("content-type", "")) or request.method != "POST":
        return True
    query = parse_qs(request.url.query).get("form", [""])
    given = headers.get("x-form-token") or query[0]
    return hmac.compare_digest(given.encode(), form_token(token).encode())


def account_of(request: Request) -> StoredAccount | None:
    """Who has signed in; None where nobody needs to."""
    return cast("StoredAccount | None", getattr(request.state, "account", None))


def routes_of(routers: Sequence[Any], own: Sequence[Any]) -> list[Any]:
    """Every route of these routers and of the server itself, in the order in which they are tried."""
    return [route for router in routers for route in router.routes] + [one for one in own if hasattr(one, "path_regex")]
