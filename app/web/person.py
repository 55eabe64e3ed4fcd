"""Who is at work at this browser: a name for the history and for undo. On this machine nobody signs in."""

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

LONGEST_PERSON = 40
COOKIE = "person"
A_YEAR = 365 * 24 * 3600

router = APIRouter(include_in_schema=False)


def person_of(request: Request) -> str:
    """The name in the cookie; the office where there is none that can be one."""
    name = unquote(request.cookies.get(COOKIE, ""))
    return name if is_name(name) else OFFICE


Person = Annotated[str, Depends(person_of)]


def is_name(name: str) -> bool:
    return 1 <= len(name) <= LONGEST_PERSON and name.isprintable() and name == name.strip()


@router.post("/person")
def set_person(form: Form) -> Response:
    """Keeps the name in this browser and goes back to the page; raises Refused for what is no name."""
    name = form.get("name", "") or OFFICE
    if not is_name(name):
        raise Refused([Fault("name", quoted(name), f"a name of 1 to {LONGEST_PERSON} characters that print")])
    back = form.get("then", "/")
    answer = then(back if re.fullmatch(r"/[\w/-]*", back) and not back.startswith("//") else "/")
    answer.set_cookie(COOKIE, quote(name), max_age=A_YEAR, httponly=True, samesite="strict")
    return answer
