"""Finds a Chromium, or installs one, or says with which one command to."""

import fcntl
import os
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Callable
from pathlib import Path

from playwright.sync_api import Browser, Playwright, sync_playwright

FLAGS = (
    "--no-sandbox",
    "--disable-quic",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--no-first-run",
    "--disable-dev-shm-usage",
    "--disable-gpu",
)
BY_HAND = "apt-get install -y chromium"


class NoChromium(RuntimeError):
    """No browser, and none could be installed."""


class OneBrowser:
    """A browser that is started when it is first asked for, and again after it was closed."""

    def __init__(self) -> None:
        self._driver: Playwright | None = None
        self._browser: Browser | None = None

    def opened(self) -> Browser:
        """Raises NoChromium with the command to run."""
        if self._browser is None:
            self._driver = self._driver or sync_playwright().start()
            path = executable(self._driver.chromium.executable_path)
            self._browser = self._driver.chromium.launch(executable_path=path, args=list(FLAGS))
        return self._browser

    def close(self) -> None:
        if self._browser:
            self._browser.close()
        if self._driver:
            self._driver.stop()
        self._driver = self._browser = None


def executable(own: str) -> str:
    """Path of a Chromium; `own` is where Playwright keeps its own. Raises NoChromium with the command to run."""
    found = _found_or_installed(own)
    if not found:
        raise NoChromium(f"no Chromium, and none could be installed; run as root: {BY_HAND}")
    return found


def _found_or_installed(own: str) -> str | None:
    """One worker installs while the others wait, lest they start half of it; the lock goes with its file."""
    with Path(tempfile.gettempdir(), "castcourse-tests-chromium").open("w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        found = _found(own)
        for install in (_install_by_apt, _install_by_playwright):
            if found:
                break
            install()
            found = _found(own)
    return found


def _found(own: str) -> str | None:
    debian = "/usr/bin/chromium"
    candidates = (
        debian if Path(debian).exists() else None,
        shutil.which("chromium"),
        own if Path(own).exists() else None,
    )
    return next(filter(None, candidates), None)


def _install_by_apt() -> None:
    root = [] if os.geteuid() == 0 else ["sudo", "-n"]
    if shutil.which("apt-get") and (not root or shutil.which("sudo")):
        _tried(lambda: _run([*root, "apt-get", "update"]) and _run([*root, "apt-get", "install", "-y", "chromium"]))


def _install_by_playwright() -> None:
    _tried(lambda: _run([sys.executable, "-m", "playwright", "install", "chromium"]))


def _run(command: list[str]) -> bool:
    environment = os.environ | {"DEBIAN_FRONTEND": "noninteractive"}
    return subprocess.run(command, env=environment, timeout=900, check=False).returncode == 0


def _tried(install: Callable[[], bool]) -> None:
    try:
        install()
    except (OSError, subprocess.TimeoutExpired) as error:
        print(f"Chromium was not installed: {error}", file=sys.stderr)
