"""A real Chromium and a real server; whatever a page complains about fails its test.

The browser is closed before a test of another folder runs, as Playwright's loop would be in the way of theirs.
"""

import os
import socket
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import httpx
import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, BrowserContext, Page

ROOT = Path(__file__).parents[2]
sys.path.insert(0, str(Path(__file__).parent))

from chromium import NoChromium, OneBrowser  # noqa: E402
from troubles import Troubles  # noqa: E402


@dataclass(frozen=True)
class Server:
    """A running server: its address without a slash at the end, and its data folder."""

    address: str
    data: Path

    def create(self, file: Path | dict[str, Any]) -> dict[str, Any]:
        """A project from a file; its ids."""
        body = file.read_bytes() if isinstance(file, Path) else None
        sent = {"content": body} if body else {"json": file}
        headers = {"content-type": "application/json"}
        answer = httpx.post(f"{self.address}/api/projects", headers=headers, timeout=60, **sent)  # type: ignore[arg-type]
        assert answer.status_code == 201, answer.text
        ids: dict[str, Any] = answer.json()
        return ids


@contextmanager
def running(data: Path) -> Iterator[Server]:
    """A server on a free port of this machine."""
    with socket.create_server(("127.0.0.1", 0)) as taken:
        port = taken.getsockname()[1]
    command = [sys.executable, str(Path(__file__).with_name("served.py")), str(data), str(port)]
    with subprocess.Popen(command, cwd=ROOT, env=os.environ | {"PYTHONPATH": str(ROOT)}) as process:
        try:
            _await_answer(f"http://127.0.0.1:{port}", process)
            yield Server(f"http://127.0.0.1:{port}", data)
        finally:
            process.terminate()


@pytest.fixture(scope="session")
def server(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Server]:
    """One server for all browser tests, on a fresh data folder."""
    with running(tmp_path_factory.mktemp("data")) as started:
        yield started


@pytest.fixture(scope="session")
def demo(server: Server) -> dict[str, Any]:
    """The ids of the demonstration's twelve panels, brought in anew."""
    return server.create(ROOT / "demo_data" / "casting_yard.json")


@pytest.fixture
def empty_server(tmp_path: Path) -> Iterator[Server]:
    """A server without any project."""
    with running(tmp_path) as started:
        yield started


ONE = OneBrowser()


@pytest.fixture
def browser() -> Browser:
    """The same for all tests of this folder."""
    try:
        return ONE.opened()
    except NoChromium as error:
        pytest.fail(str(error))


@pytest.hookimpl(trylast=True)
def pytest_runtest_teardown(nextitem: pytest.Item | None) -> None:
    if nextitem is None or not nextitem.path.is_relative_to(Path(__file__).parent):
        ONE.close()


def pytest_sessionfinish() -> None:
    ONE.close()


@pytest.fixture
def context(browser: Browser, server: Server) -> Iterator[BrowserContext]:
    opened = browser.new_context(base_url=server.address, viewport={"width": 1440, "height": 900}, locale="en-US")
    yield opened
    opened.close()


@pytest.fixture
def troubles() -> Iterator[Troubles]:
    """Fails the test for every trouble that it did not name with `expect`."""
    seen = Troubles()
    yield seen
    assert not seen.unexpected(), "\n".join(seen.unexpected())


@pytest.fixture
def page(context: BrowserContext, troubles: Troubles) -> Page:
    opened = context.new_page()
    troubles.watch(opened)
    return opened


@pytest.fixture
def axe() -> Callable[..., list[str]]:
    """What axe finds on a page: rule, impact, and the first places; `strict` asks for 7:1 as the bed page promises."""

    def found(page: Page, *, strict: bool = False) -> list[str]:
        # Preloading would write style elements into the page, which its policy forbids.
        options = {"rules": {"color-contrast-enhanced": {"enabled": strict}}, "preload": False}
        violations = Axe().run(page, options=options).response["violations"]
        return [
            f"{fault['id']} ({fault['impact']}): {', '.join(str(node['target']) for node in fault['nodes'][:5])}"
            for fault in violations
        ]

    return found


def _await_answer(address: str, process: subprocess.Popen[bytes]) -> None:
    for _ in range(200):
        assert process.poll() is None, "the server ended before it answered"
        try:
            if httpx.get(f"{address}/healthz").status_code == 200:
                return
        except httpx.TransportError:
            time.sleep(0.1)
    raise AssertionError("the server did not answer within 20 seconds")
