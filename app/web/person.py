"""Who is at work at this browser: a name for the history and for undo; on this machine nobody signs in."""

import re
from typing import Annotated
from urllib.parse import quote, unquote

from fastapi import APIRouter, Depends
from starlette.requests import Request
from starlette.responses import Response

from app.panel.faults import Fault, Refused
from app.panel.wording import quoted
from app.web.database import OFFICE
from app.web.forms import Form, then
from app.web.gate import account_of

LONGEST_PERSON = 40
COOKIE = "person"
A_YEAR = 365 * 24 * 3600

router = APIRouter(include_in_schema=False)


def person_of(request: Request) -> str:
    """Who has signed in; else the name in the cookie, or the office where there is none that can be one."""
    account = account_of(request)
    if account is not None:
        return account.name
    name = unquote(request.cookies.get(COOKIE, ""))
    return name if is_name(name) else OFFICE


Person = Annotated[str, Depends(person_of)]


def is_name(name: str) -> bool:
    return 1 <= len(name) <= LONGEST_PERSON and name.isprintable() and name == name.strip()


def way_back(path: str) -> str:
    """A page of our own, or the list of projects for anything else."""
    return path if re.fullmatch(r"/[\w/-]*", path) and not path.startswith("//") else "/"


@router.post("/person")
def set_person(form: Form) -> Response:
    """Keeps the name in this browser and goes back to the page; raises Refused for what is no name."""
    name = form.get("name", "") or OFFICE
    if not is_name(name):
        raise Refused([Fault("name", quoted(name), f"a name of 1 to {LONGEST_PERSON} characters that print")])
    answer = then(way_back(form.get("then", "/")))
    answer.set_cookie(COOKIE, quote(name), max_age=A_YEAR, httponly=True, samesite="strict")
    return answer
