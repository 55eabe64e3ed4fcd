"""Request bodies: capped while they stream in, read as JSON with the place of the mistake."""

import json
from typing import Any

from starlette.requests import Request
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from app.panel.faults import Fault, Refused
from app.web.problems import Failure, failure
from app.web.security import is_json


class BodyLimit:
    """Stops reading a body as soon as it is larger than allowed; a false Content-Length does not help it through."""

    def __init__(self, app: ASGIApp, largest: int) -> None:
        self.app = app
        self.largest = largest

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        read = 0

        async def receive_counted() -> Message:
            nonlocal read
            message = await receive()
            read += len(message.get("body", b""))
            if read > self.largest:
                raise self.too_large()
            return message

        await self.app(scope, receive_counted if scope["type"] == "http" else receive, send)

    def too_large(self) -> Failure:
        return failure("too-large", f"Expected at most {self.largest // 1_000_000} MB.")


async def json_body(request: Request) -> Any:
    """The body as JSON; raises Failure for another media type, Refused for text that is not JSON."""
    if not is_json(request.headers.get("content-type", "")):
        raise failure("wrong-type", "Expected Content-Type application/json.")
    return parsed(await request.body())


def parsed(body: bytes) -> Any:
    """JSON in UTF-8 as values; raises Refused with the line and column of the mistake."""
    try:
        return json.loads(body.decode("utf-8-sig"), parse_constant=_no_constant)
    except json.JSONDecodeError as error:
        raise Refused([Fault(f"line {error.lineno}, column {error.colno}", _near(error), "JSON")]) from error
    except UnicodeDecodeError as error:
        raise Refused([Fault(f"byte {error.start}", "bytes that are not UTF-8", "JSON in UTF-8")]) from error
    except RecursionError as error:
        raise Refused([Fault("", "lists or objects nested too deep to read", "a project file")]) from error


def _no_constant(name: str) -> None:
    raise Refused([Fault("", name, "numbers that JSON can hold")])


def _near(error: json.JSONDecodeError) -> str:
    near = error.doc[error.pos : error.pos + 20]
    return repr(near) if near else "the end of the text"
