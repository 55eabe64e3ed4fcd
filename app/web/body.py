"""Request bodies: capped while they stream in, read as JSON with the place of the mistake."""

from typing import Annotated, Any

from fastapi import Depends
from starlette.requests import Request
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from app.documents.json_text import read_text
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
    """The body as JSON; raises Failure for another media type, Refused for text that is not clean JSON."""
    if not is_json(request.headers.get("content-type", "")):
        raise failure("wrong-type", "Expected Content-Type application/json.")
    return read_text(await request.body())


JsonBody = Annotated[Any, Depends(json_body)]


def json_of(description: str, media_type: str = "application/json") -> dict[str, Any]:
    """The body of a route, for the OpenAPI description."""
    content = {media_type: {"schema": {"type": "object"}}}
    return {"requestBody": {"required": True, "description": description, "content": content}}
