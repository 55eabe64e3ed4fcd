"""Errors on their way out: each one becomes a problem in this one place."""

from collections.abc import Awaitable, Callable

from fastapi import FastAPI
from fastapi.exceptions import RequestValidationError
from starlette.exceptions import HTTPException
from starlette.requests import ClientDisconnect, Request
from starlette.responses import Response

from app.panel.faults import Fault, Refused
from app.web.answers import answer_problem
from app.web.problems import CATALOGUE, Problem, Translate, problem, refused
from app.web.security import HEADERS

Handler = Callable[[Request, Exception], Awaitable[Response]]

FOUND_BY_SERVER = {404: "not-found", 405: "method", 413: "too-large", 415: "wrong-type"}


def add_failures(app: FastAPI) -> None:
    """Every error of the catalogue, and the server's own, answered as a problem."""
    for error, translate in CATALOGUE.items():
        app.add_exception_handler(error, _answering(translate))
    app.add_exception_handler(RequestValidationError, _answering(lambda error: refused(Refused(_faults(error)))))
    app.add_exception_handler(HTTPException, _answering(_found_by_server))
    app.add_exception_handler(ClientDisconnect, _nobody_there)
    app.add_exception_handler(Exception, _answer_failed)


def _answering(translate: Translate) -> Handler:
    async def answer(request: Request, error: Exception) -> Response:
        return answer_problem(request.scope, translate(error))

    return answer


async def _answer_failed(request: Request, _error: Exception) -> Response:
    """This answer leaves outside of all middleware, so it brings the headers itself."""
    found = problem("failed", "Its log has the details. What was shown as saved is saved.")
    answer = answer_problem(request.scope, found)
    answer.headers.update(HEADERS)
    return answer


async def _nobody_there(_request: Request, _error: Exception) -> Response:
    """Whoever asked has gone before the request was whole: nothing was done, and nobody hears this."""
    return Response(status_code=400)


def _found_by_server(error: HTTPException) -> Problem:
    code = FOUND_BY_SERVER.get(error.status_code, "malformed")
    details = {"not-found": "Check the address, or start from the list of projects."}
    found = problem(code, details.get(code, f"{error.detail}."))
    return Problem(found.kind, found.detail, headers=dict(error.headers or {}))


def _faults(error: RequestValidationError) -> list[Fault]:
    return [
        Fault(".".join(str(step) for step in fault["loc"][1:]), repr(fault.get("input")), str(fault["msg"]))
        for fault in error.errors()
    ]
