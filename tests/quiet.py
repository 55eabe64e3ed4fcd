"""Tests that measure time, marked `quiet`, run while no other test does; all others run side by side.

Two locks in files that all workers share. A test that is not quiet passes the turnstile and holds the floor with
others; a quiet one stays in the turnstile while the floor empties: those behind it wait, and it is not passed for ever.
"""

import fcntl
import tempfile
from collections.abc import Iterator
from contextlib import ExitStack
from io import TextIOWrapper
from pathlib import Path

import pytest


@pytest.hookimpl(wrapper=True)
def pytest_runtest_protocol(item: pytest.Item) -> Iterator[None]:
    """Set-up and tear-down are part of the test. Without workers there is nobody to wait for."""
    run = getattr(item.config, "workerinput", {}).get("testrunuid")
    with ExitStack() as held:
        if run is not None:
            is_quiet = item.get_closest_marker("quiet") is not None
            turnstile = held.enter_context(_locked(run, "turnstile", fcntl.LOCK_EX))
            held.enter_context(_locked(run, "floor", fcntl.LOCK_EX if is_quiet else fcntl.LOCK_SH))
            if not is_quiet:
                turnstile.close()
        return (yield)


def _locked(run: str, name: str, how: int) -> TextIOWrapper:
    """A lock is let go of when its file is closed."""
    file = Path(tempfile.gettempdir(), f"castcourse-tests-{run}-{name}").open("w")  # noqa: SIM115
    fcntl.flock(file, how)
    return file
