"""Forms as they are posted: named texts, and one file."""

from collections.abc import Mapping
from typing import Annotated

from fastapi import Depends
from starlette.datastructures import UploadFile
from starlette.requests import Request
from starlette.responses import RedirectResponse

from app.panel.faults import Fault, Refused

LONGEST_NAME = 120
LONGEST_NUMBER = 9
OWN_FIELDS = frozenset({"edit", "base_revision", "command_id", "on_top", "temperature", "hidden", "then", "tape"})
"""Fields of an edit's form that are not the edit's own."""


async def read_form(request: Request) -> dict[str, str]:
    """The texts of a form, without blanks around them."""
    async with request.form() as form:
        return {name: value.strip() for name, value in form.items() if isinstance(value, str)}


async def read_lists(request: Request) -> dict[str, tuple[str, ...]]:
    """The texts of a form by field, as many as each field has."""
    async with request.form() as form:
        return {name: tuple(str(value) for value in form.getlist(name)) for name in form}


async def read_upload(request: Request) -> bytes:
    """The file of a form's field `file`; empty when none was chosen."""
    async with request.form(max_files=1) as form:
        file = form.get("file")
        return await file.read() if isinstance(file, UploadFile) else b""


Form = Annotated[Mapping[str, str], Depends(read_form)]
Lists = Annotated[Mapping[str, tuple[str, ...]], Depends(read_lists)]
Upload = Annotated[bytes, Depends(read_upload)]


def named(form: Mapping[str, str], field: str, what: str) -> str:
    """A name typed in a form; raises Refused for an empty or endless one."""
    text = form.get(field, "")
    if not 1 <= len(text) <= LONGEST_NAME:
        found = f"{len(text)} characters" if text else "nothing"
        raise Refused([Fault(field, found, f"{what} of 1 to {LONGEST_NAME} characters")])
    return text


def chosen(form: Mapping[str, str], field: str, choices: Mapping[str, object] | tuple[str, ...]) -> str:
    """One of the choices offered; raises Refused for anything else."""
    text = form.get(field, "")
    if text not in choices:
        raise Refused([Fault(field, text or "nothing", f"one of {', '.join(choices)}")])
    return text


def whole_number(form: Mapping[str, str], field: str) -> int:
    """A number that a page put into its own form; raises Refused for anything else."""
    text = form.get(field, "")
    if not text.isascii() or not text.isdigit() or len(text) > LONGEST_NUMBER:
        raise Refused([Fault(field, text or "nothing", f"a whole number of at most {LONGEST_NUMBER} digits")])
    return int(text)


def then(address: str) -> RedirectResponse:
    """After a change: the page that shows it, which can be loaded again without repeating the change."""
    return RedirectResponse(address, status_code=303)
