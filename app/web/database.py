"""What a route asks for: the database, the time, and who is asking."""

from datetime import UTC, datetime
from typing import Annotated

from fastapi import Depends
from starlette.requests import Request

from app.workflow.opening import Connections

OFFICE = "office"
"""The one person of a server that only this machine reaches."""


async def database_of(request: Request) -> Connections:
    engine: Connections = request.app.state.engine
    return engine


async def now() -> datetime:
    return datetime.now(UTC)


Database = Annotated[Connections, Depends(database_of)]
Now = Annotated[datetime, Depends(now)]
