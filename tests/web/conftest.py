"""A real server in this process on a fresh database, asked over ASGI."""

import sys
from collections.abc import AsyncIterator
from pathlib import Path

import httpx
import pytest

from app.main import create_app
from app.settings import Settings

sys.path.insert(0, str(Path(__file__).parent))


@pytest.fixture(scope="session")
def anyio_backend() -> str:
    return "asyncio"


@pytest.fixture
async def app(tmp_path: Path) -> AsyncIterator[object]:
    made = create_app(Settings(tmp_path / "data", largest_body=1_000_000))
    async with made.router.lifespan_context(made):
        yield made


@pytest.fixture
async def client(app: object) -> AsyncIterator[httpx.AsyncClient]:
    """A script: no browser headers."""
    transport = httpx.ASGITransport(app)
    async with httpx.AsyncClient(transport=transport, base_url="http://test") as opened:
        yield opened


@pytest.fixture
async def visitor(app: object) -> AsyncIterator[httpx.AsyncClient]:
    """A browser on one of our own pages, without script."""
    transport = httpx.ASGITransport(app)
    headers = {"sec-fetch-site": "same-origin", "origin": "http://test"}
    async with httpx.AsyncClient(transport=transport, base_url="http://test", headers=headers) as opened:
        yield opened
