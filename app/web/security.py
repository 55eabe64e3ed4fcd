"""What every answer carries, and which requests are turned away before a route sees them."""

from collections.abc import Iterable
from urllib.parse import urlsplit

from starlette.datastructures import Headers, MutableHeaders
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from app.web.answers import answer_problem
from app.web.problems import problem

CONTENT_SECURITY_POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self'; "
    "connect-src 'self'; manifest-src 'self'; worker-src 'self'; form-action 'self'; base-uri 'none'; "
    "frame-ancestors 'none'"
)

HEADERS = {
    "content-security-policy": CONTENT_SECURITY_POLICY,
    "x-content-type-options": "nosniff",
    "referrer-policy": "no-referrer",
    "cross-origin-opener-policy": "same-origin",
}

SAFE_METHODS = frozenset({"GET", "HEAD", "OPTIONS"})
PREFLIGHTED_METHODS = frozenset({"PUT", "PATCH", "DELETE"})
"""Methods that a browser never sends to another site without asking first, which this server never grants."""


class SecurityHeaders:
    """Puts the headers above on every answer."""

    def __init__(self, app: ASGIApp) -> None:
        self.app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        async def send_with_headers(message: Message) -> None:
            if message["type"] == "http.response.start":
                MutableHeaders(scope=message).update(HEADERS)
            await send(message)

        await self.app(scope, receive, send_with_headers if scope["type"] == "http" else send)


class KnownHosts:
    """Turns away requests under a name that is not ours, so that no foreign name can be bent to this machine."""

    def __init__(self, app: ASGIApp, hosts: Iterable[str]) -> None:
        self.app = app
        self.hosts = frozenset(hosts)

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] == "http" and host_name(Headers(scope=scope).get("host", "")) not in self.hosts:
            found = problem("wrong-host", f"Expected one of {', '.join(sorted(self.hosts - {'test'}))}.")
            await answer_problem(scope, found)(scope, receive, send)
            return
        await self.app(scope, receive, send)


class SameSite:
    """Turns away changes that another site's page asked for."""

    def __init__(self, app: ASGIApp) -> None:
        self.app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] == "http" and not is_own(scope["method"], Headers(scope=scope)):
            found = problem("cross-site", "Changes are taken from this server's own pages, or as JSON from a script.")
            await answer_problem(scope, found)(scope, receive, send)
            return
        await self.app(scope, receive, send)


def host_name(host: str) -> str:
    """A Host header without its port; an IPv6 address keeps its brackets."""
    name, bracket, _ = host.partition("]")
    return f"{name}]" if bracket else host.partition(":")[0].lower()


def is_own(method: str, headers: Headers) -> bool:
    """Whether a request may change something: sent by our own page, by hand, or by a script with JSON."""
    if method in SAFE_METHODS:
        return True
    site, origin = headers.get("sec-fetch-site"), headers.get("origin")
    if site is not None:
        return site in {"same-origin", "none"}
    if origin is not None:
        return urlsplit(origin).netloc == headers.get("host")
    return method in PREFLIGHTED_METHODS or is_json(headers.get("content-type", ""))


def is_json(content_type: str) -> bool:
    """Whether a media type is JSON, which no HTML form can send."""
    media = content_type.partition(";")[0].strip().lower()
    return media == "application/json" or (media.startswith("application/") and media.endswith("+json"))
