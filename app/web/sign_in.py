"""Signing in and out, and one's own account: password, sessions; for owners all accounts and who did what."""

import time
from collections import OrderedDict
from dataclasses import dataclass
from threading import Lock
from typing import Annotated

from fastapi import APIRouter, Depends, Query
from starlette.requests import Request
from starlette.responses import HTMLResponse, RedirectResponse, Response

from app.panel.faults import Fault, Refused
from app.storage import Session, accounts, audit, reading, writing
from app.storage.accounts import StoredAccount, StoredSignIn
from app.web.database import Database, Now
from app.web.forms import Form, then
from app.web.gate import account_of, cookie_name
from app.web.pages import Page, Step, show
from app.web.person import way_back
from app.web.problems import Failure, failure, problem
from app.web.words import at
from app.workflow.accounts import LONGEST_NAME, change_password, sign_in, whose

router = APIRouter(include_in_schema=False)

TRIES, WITHIN = 5, 15 * 60
"""Sign-ins that may fail for one name or from one address within so many seconds; then it waits."""

WRONG = "Name and password do not belong together."


class Tries:
    """Failed sign-ins by name and by address, for as long as they count."""

    def __init__(self) -> None:
        self._lock = Lock()
        self._failed: OrderedDict[str, list[float]] = OrderedDict()

    def wait(self, *keys: str) -> int:
        """Seconds until another may be tried; 0: now."""
        with self._lock:
            now = time.monotonic()
            waits = [self._left(key, now) for key in keys]
        return max(waits)

    def failed(self, *keys: str) -> None:
        with self._lock:
            for key in keys:
                self._failed.setdefault(key, []).append(time.monotonic())
                self._failed.move_to_end(key)
            while len(self._failed) > 10_000:
                self._failed.popitem(last=False)

    def forget(self, key: str) -> None:
        with self._lock:
            self._failed.pop(key, None)

    def _left(self, key: str, now: float) -> int:
        recent = [one for one in self._failed.get(key, []) if now - one < WITHIN]
        if key in self._failed:
            self._failed[key] = recent
        return 0 if len(recent) < TRIES else max(1, round(WITHIN - (now - recent[-TRIES])))


@dataclass(frozen=True, slots=True, kw_only=True)
class SignInPage(Page):
    then: str
    name: str = ""
    faults: tuple[Fault, ...] = ()


@dataclass(frozen=True, slots=True)
class SessionRow:
    id: str
    words: str
    is_here: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class AccountPage(Page):
    name: str
    role: str
    is_owner: bool
    sessions: tuple[SessionRow, ...]
    notice: str = ""
    faults: tuple[Fault, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class AccountsPage(Page):
    accounts: tuple[tuple[str, str, str], ...]
    audit: tuple[tuple[str, str, str, str], ...]


def who(request: Request) -> StoredAccount:
    """The account; raises Failure where nobody signs in."""
    account = account_of(request)
    if account is None:
        raise failure("not-found", "Nobody signs in on this server: it answers this machine only.")
    return account


Who = Annotated[StoredAccount, Depends(who)]


@router.get("/sign-in")
def ask(request: Request, to: Annotated[str, Query(alias="then")] = "/") -> Response:
    """The form; where nobody needs to sign in, the list of projects."""
    if not request.app.state.settings.needs_sign_in:
        return then("/")
    return show("sign_in.html", SignInPage(title="Sign in", then=way_back(to)))


@router.post("/sign-in")
def enter(request: Request, form: Form, database: Database, now: Now) -> Response:
    """A new session, never one that was there before; 429 after too many failures."""
    name, tries = form.get("name", "")[:LONGEST_NAME], request.app.state.tries
    keys = (f"name {name.casefold()}", f"from {request.client.host if request.client else ''}")
    if wait := tries.wait(*keys):
        found = problem("too-many", f"Too many failed sign-ins. Try again in {max(1, wait // 60)} min.")
        raise Failure(type(found)(found.kind, found.detail, headers={"retry-after": str(wait)}))
    with reading(database) as session:
        account = whose(session, name, form.get("password", ""))
    with writing(database) as session:
        signed = sign_in(session, account, name, _device(request), now)
        if signed and (old := request.cookies.get(cookie_name(request.url.scheme))):
            _end(session, old, now)
    if signed is None:
        tries.failed(*keys)
        page = SignInPage(
            title="Sign in",
            then=way_back(form.get("then", "/")),
            name=name,
            faults=(Fault("sign-in", "another", WRONG),),
        )
        return show("sign_in.html", page, 422)
    tries.forget(keys[0])
    return _with_cookie(then(way_back(form.get("then", "/"))), request, signed.token)


@router.post("/sign-out")
def leave(request: Request, account: Who, database: Database, now: Now) -> RedirectResponse:
    here: StoredSignIn = request.state.session
    with writing(database) as session:
        accounts.end_sessions(session, account.id, now, only=here.id)
        audit.note(session, account.name, "signed out", here.device, now)
    answer = then("/sign-in")
    answer.delete_cookie(cookie_name(request.url.scheme), path="/", httponly=True, samesite="strict")
    return answer


@router.get("/account")
def own(request: Request, account: Who, database: Database, now: Now) -> HTMLResponse:
    return _account(request, account, database, now)


@router.post("/account/password")
def password(request: Request, account: Who, form: Form, database: Database, now: Now) -> Response:
    """Every other session ends."""
    try:
        with writing(database) as session:
            here: StoredSignIn = request.state.session
            change_password(session, account, here, form.get("old", ""), form.get("new", ""), now)
    except Refused as error:
        return _account(request, account, database, now, faults=error.faults)
    return _account(request, account, database, now, notice="The password is changed; all other sessions have ended.")


@router.post("/account/sessions/{session_id}/end")
def end(session_id: str, account: Who, database: Database, now: Now) -> RedirectResponse:
    """One of one's own sessions, and nobody else's."""
    with writing(database) as session:
        accounts.end_sessions(session, account.id, now, only=session_id)
        audit.note(session, account.name, "session ended", account.name, now)
    return then("/account")


@router.get("/accounts")
def everybody(_account: Who, database: Database) -> HTMLResponse:
    """For owners: accounts, and who did what."""
    with reading(database) as session:
        known, lines = accounts.every(session), audit.newest(session)
    page = AccountsPage(
        title="Accounts",
        path=(Step("Projects", "/"), Step("Accounts")),
        accounts=tuple((one.name, one.role, "disabled" if one.disabled_at else "") for one in known),
        audit=tuple((at(line.at), line.who, line.what, line.about) for line in lines),
    )
    return show("accounts.html", page)


def _account(
    request: Request,
    account: StoredAccount,
    database: Database,
    now: Now,
    *,
    notice: str = "",
    faults: tuple[Fault, ...] = (),
) -> HTMLResponse:
    here: StoredSignIn = request.state.session
    with reading(database) as session:
        open_ones = accounts.sessions_of(session, account.id, now)
    page = AccountPage(
        title=account.name,
        path=(Step("Projects", "/"), Step("Account")),
        name=account.name,
        role=account.role,
        is_owner=account.role == "owner",
        sessions=tuple(SessionRow(one.id, _session_words(one), one.id == here.id) for one in open_ones),
        notice=notice,
        faults=faults,
    )
    return show("account.html", page, 422 if faults else 200)


def _session_words(one: StoredSignIn) -> str:
    return f"{one.device}, since {at(one.created_at)}, used {at(one.last_used_at)}"


def _end(session: Session, token: str, now: Now) -> None:
    found = accounts.by_token(session, token, now)
    if found:
        accounts.end_sessions(session, found[0].id, now, only=found[1].id)


def _device(request: Request) -> str:
    """What the browser calls itself, cut short."""
    plain = "".join(sign for sign in request.headers.get("user-agent", "") if sign.isprintable())
    return plain[:120] or "a device without a name"


def _with_cookie(answer: RedirectResponse, request: Request, token: str) -> RedirectResponse:
    is_secure = request.url.scheme == "https"
    name = cookie_name(request.url.scheme)
    seconds = int(accounts.LASTS.total_seconds())
    answer.set_cookie(name, token, max_age=seconds, path="/", secure=is_secure, httponly=True, samesite="strict")
    answer.headers["cache-control"] = "no-store"
    return answer
