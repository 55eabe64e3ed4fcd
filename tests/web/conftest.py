"""A real server in this process on a fresh database, asked over ASGI."""

import shutil
import sys
from collections.abc import AsyncIterator
from pathlib import Path

import httpx
import pytest

from app.main import create_app
from app.settings import Settings
from app.workflow.opening import open_data

sys.path.insert(0, str(Path(__file__).parent))


@pytest.fixture(scope="session")
def anyio_backend() -> str:
    return "asyncio"


@pytest.fixture(scope="session")
def empty_database(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A database without projects, made once by the migrations and copied for every test."""
    path = tmp_path_factory.mktemp("empty") / "empty.sqlite3"
    open_data(path).dispose()
    return path


@pytest.fixture
async def app(tmp_path: Path, empty_database: Path) -> AsyncIterator[object]:
    settings = Settings(tmp_path / "data", largest_body=1_000_000)
    settings.data.mkdir()
    shutil.copy(empty_database, settings.database)
    made = create_app(settings)
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
