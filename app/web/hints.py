"""Who looks at which panel, and the hint that it has a newer revision: a number, nothing more.

Within one process: a change is told to the pages that are open, from whatever thread it was saved in.
"""

import asyncio
import signal
import threading
from collections import defaultdict
from collections.abc import AsyncIterator, Awaitable, Callable, Iterator
from contextlib import contextmanager
from types import FrameType
from typing import Annotated

from fastapi import Depends
from starlette.requests import Request

STILL_HERE = 10.0
"""Seconds after which a page that heard nothing is told that the line stands."""

Listener = tuple[asyncio.AbstractEventLoop, "asyncio.Queue[int | None]"]


class Hints:
    """Open pages by panel."""

    def __init__(self) -> None:
        self._listeners: dict[str, set[Listener]] = defaultdict(set)
        self._lock = threading.Lock()
        self._is_closed = False

    def tell(self, panel_id: str, revision: int) -> None:
        """Says to every page of the panel that this revision is there."""
        with self._lock:
            listeners = tuple(self._listeners.get(panel_id, ()))
        _send(listeners, revision)

    def close(self) -> None:
        """Ends every stream, so that nobody waits for a page that is still open."""
        with self._lock:
            self._is_closed = True
            listeners = tuple(one for several in self._listeners.values() for one in several)
        _send(listeners, None)

    async def stream(self, panel_id: str, revision: Callable[[], Awaitable[int]]) -> AsyncIterator[str]:
        """Server-sent events (HTML standard, 9.2), the revision that is there first: asked for once it listens."""
        listener = asyncio.get_running_loop(), asyncio.Queue[int | None]()
        with self._lock:
            self._listeners[panel_id].add(listener)
        try:
            yield f"retry: 1000\ndata: {await revision()}\n\n"
            while not self._is_closed and (said := await _next(listener[1])) is not None:
                yield said
        finally:
            self._forget(panel_id, listener)

    def listening(self, panel_id: str) -> int:
        """How many pages of a panel are open."""
        return len(self._listeners.get(panel_id, ()))

    def _forget(self, panel_id: str, listener: Listener) -> None:
        with self._lock:
            self._listeners[panel_id].discard(listener)
            if not self._listeners[panel_id]:
                del self._listeners[panel_id]


async def _next(queue: "asyncio.Queue[int | None]") -> str | None:
    try:
        revision = await asyncio.wait_for(queue.get(), STILL_HERE)
    except TimeoutError:
        return ": here\n\n"
    return None if revision is None else f"data: {revision}\n\n"


def _send(listeners: tuple[Listener, ...], revision: int | None) -> None:
    for loop, queue in listeners:
        loop.call_soon_threadsafe(queue.put_nowait, revision)


def hints_of(request: Request) -> Hints:
    hints: Hints = request.app.state.hints
    return hints


Told = Annotated[Hints, Depends(hints_of)]


@contextmanager
def closed_by_signals(hints: Hints) -> Iterator[None]:
    """Closes the streams as soon as the process is told to end: a server waits for open answers first."""
    if threading.current_thread() is not threading.main_thread():
        yield
        return
    before = {number: signal.getsignal(number) for number in (signal.SIGINT, signal.SIGTERM)}

    def end(number: int, frame: FrameType | None) -> None:
        hints.close()
        then = before[signal.Signals(number)]
        if callable(then):
            then(number, frame)

    for number in before:
        signal.signal(number, end)
    try:
        yield
    finally:
        for number, handler in before.items():
            signal.signal(number, handler)
