"""A Chromium and a server that can be killed without warning."""

import os
import signal
import socket
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from pathlib import Path

import httpx
from chromium import FLAGS, executable
from playwright.sync_api import BrowserContext, BrowserType

ROOT = Path(__file__).parents[2]


@dataclass
class Killable:
    """A process in a session of its own."""

    process: "subprocess.Popen[bytes]"

    def kill(self) -> None:
        """As the system does when it needs the memory; returns once the last process of the group has gone.

        Chromium deletes a database that it finds locked by a process of its own that is still dying.
        """
        os.killpg(self.process.pid, signal.SIGKILL)
        self.process.wait()
        while self._lives():
            time.sleep(0.02)

    def _lives(self) -> bool:
        """Whether a process of the group still holds anything: what is a zombie does not."""
        for stat in Path("/proc").glob("[0-9]*/stat"):
            with suppress(OSError):
                state, _, group = stat.read_text().rpartition(")")[2].split()[:3]
                if int(group) == self.process.pid and state not in "ZX":
                    return True
        return False


@contextmanager
def killable_chromium(kind: BrowserType, profile: Path) -> Iterator[tuple[Killable, BrowserContext]]:
    """A browser on a profile that outlives it."""
    port = profile / "DevToolsActivePort"
    port.unlink(missing_ok=True)
    for lock in profile.glob("Singleton*"):
        lock.unlink()
    command = [executable(kind.executable_path), *FLAGS, "--headless", "--remote-debugging-port=0"]
    started = subprocess.Popen(
        [*command, f"--user-data-dir={profile}", "about:blank"], start_new_session=True, stderr=subprocess.DEVNULL
    )
    killable = Killable(started)
    try:
        number = _awaited(port, started)
        browser = kind.connect_over_cdp(f"http://127.0.0.1:{number}")
        yield killable, browser.contexts[0]
        browser.close()
    finally:
        if started.poll() is None:
            killable.kill()


def _awaited(port: Path, process: "subprocess.Popen[bytes]") -> str:
    for _ in range(1000):
        assert process.poll() is None, "Chromium ended before it listened"
        text = port.read_text() if port.exists() else ""
        if text.count("\n") >= 1:
            return text.splitlines()[0]
        time.sleep(0.01)
    raise AssertionError("Chromium did not listen within 10 seconds")


@dataclass
class KillableServer:
    """A server on one port and data folder, started again after each kill."""

    data: Path
    port: int
    wrapped: tuple[str, ...] = ()
    running: Killable | None = None

    @property
    def address(self) -> str:
        return f"http://127.0.0.1:{self.port}"

    def start(self) -> None:
        command = [*self.wrapped, sys.executable, str(ROOT / "tests/browser/served.py"), str(self.data), str(self.port)]
        environment = os.environ | {"PYTHONPATH": str(ROOT)}
        self.running = Killable(subprocess.Popen(command, cwd=ROOT, env=environment, start_new_session=True))
        for _ in range(400):
            assert self.running.process.poll() is None, "the server ended before it answered"
            try:
                httpx.get(f"{self.address}/healthz")
            except httpx.TransportError:
                time.sleep(0.05)
            else:
                return
        raise AssertionError("the server did not answer within 20 seconds")

    def kill(self) -> None:
        assert self.running
        self.running.kill()

    def create(self, file: dict[str, object]) -> dict[str, object]:
        answer = httpx.post(f"{self.address}/api/projects", json=file, timeout=60)
        assert answer.status_code == 201, answer.text
        ids: dict[str, object] = answer.json()
        return ids


@contextmanager
def killable_server(data: Path, wrapped: tuple[str, ...] = ()) -> Iterator[KillableServer]:
    with socket.create_server(("127.0.0.1", 0)) as taken:
        port = taken.getsockname()[1]
    server = KillableServer(data, port, wrapped)
    server.start()
    try:
        yield server
    finally:
        if server.running and server.running.process.poll() is None:
            server.kill()
