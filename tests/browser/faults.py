"""A proxy on loopback between the browser and the real server, which does to requests what weak signal does."""

import http.client
import random
import threading
import time
from collections import deque
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from types import TracebackType
from urllib.parse import urlsplit

FIELD = "/api/field/"
TOLD = "/told/"
"""What a page tells the test: heard at any time, passed on to nobody."""

PORTAL = b"<!doctype html><title>Welcome</title><p>Press here to use this network.</p>"
HOP = {"connection", "keep-alive", "transfer-encoding", "content-length", "host"}


class FaultProxy:
    """Forwards everything to `upstream`; each request for records meets the next fault that waits, if any does.

    Faults: "drop" (closed before the server hears of it), "lose" (closed once the server has answered), "cut" (half of
    the body reaches the server), "portal" (200 with a page), "redirect", "hang" (until `let_go`), and any status such
    as "503"; `always` is one that every request meets. `is_offline` closes every connection at once; `lossy` is the
    share of requests for records that are dropped or lose their answer, `bytes_per_second` slows them down.
    """

    def __init__(self, upstream: str, seed: int = 7) -> None:
        self.upstream = urlsplit(upstream)
        self.waiting: deque[str] = deque()
        self.always = ""
        self.met: list[str] = []
        self.told: list[str] = []
        self.is_offline = False
        self.lossy = 0.0
        self.bytes_per_second = 0
        self.random = random.Random(seed)
        self._let_go = threading.Event()
        self._server = _Server(("127.0.0.1", 0), _Handler)
        self._server.proxy = self

    @property
    def address(self) -> str:
        return f"http://127.0.0.1:{self._server.server_port}"

    def __enter__(self) -> "FaultProxy":
        threading.Thread(target=self._server.serve_forever, kwargs={"poll_interval": 0.02}, daemon=True).start()
        return self

    def __exit__(self, *_: type[BaseException] | BaseException | TracebackType | None) -> None:
        self.let_go()
        self._server.shutdown()
        self._server.server_close()

    def let_go(self) -> None:
        """Ends every hanging request without an answer."""
        self._let_go.set()

    def hang(self) -> None:
        self._let_go.wait(60)

    def fault_for(self, path: str) -> str:
        if not path.startswith(FIELD):
            return ""
        if self.waiting:
            self.met.append(self.waiting.popleft())
            return self.met[-1]
        if self.always:
            self.met.append(self.always)
            return self.always
        if self.random.random() < self.lossy:
            return self.random.choice(("drop", "lose", "cut"))
        return ""


class _Server(ThreadingHTTPServer):
    daemon_threads = True
    proxy: FaultProxy

    def handle_error(self, _request: object, _address: object) -> None:
        """A browser that closes its line is no news here."""


class _Handler(BaseHTTPRequestHandler):
    protocol_version = "HTTP/1.1"
    server: _Server

    def handle_one_request(self) -> None:
        super().handle_one_request()

    def forward(self) -> None:
        proxy = self.server.proxy
        body = self.rfile.read(int(self.headers.get("content-length") or 0))
        if self.path.startswith(TOLD):
            proxy.told.append(self.path.removeprefix(TOLD))
            self._answer(204, b"", {})
        elif proxy.is_offline:
            self.close_connection = True
        else:
            if proxy.bytes_per_second and self.path.startswith(FIELD):
                time.sleep(len(body) / proxy.bytes_per_second)
            self._meet(proxy.fault_for(self.path), body)

    def _meet(self, fault: str, body: bytes) -> None:
        if fault.isdigit():
            self._answer(int(fault), b"{}", {"content-type": "application/json", "retry-after": "1"})
        elif fault == "portal":
            self._answer(200, PORTAL, {"content-type": "text/html"})
        elif fault == "redirect":
            self._answer(302, b"", {"location": "/elsewhere"})
        elif fault in ("drop", "hang"):
            if fault == "hang":
                self.server.proxy.hang()
            self.close_connection = True
        else:
            self._pass_on(body, fault)

    do_GET = do_POST = do_PUT = do_PATCH = do_DELETE = do_HEAD = forward  # noqa: N815 - names of the standard library

    def _pass_on(self, body: bytes, fault: str) -> None:
        upstream = self.server.proxy.upstream
        line = http.client.HTTPConnection(str(upstream.hostname), upstream.port, timeout=30)
        try:
            headers = {key: value for key, value in self.headers.items() if key.lower() not in HOP}
            line.putrequest(self.command, self.path, skip_host=True, skip_accept_encoding=True)
            line.putheader("Host", self.headers["host"])
            for key, value in headers.items():
                line.putheader(key, value)
            if body:
                line.putheader("Content-Length", str(len(body)))
            line.endheaders()
            if fault == "cut":
                line.send(body[: len(body) // 2])
                self.close_connection = True
                return
            line.send(body)
            answer = line.getresponse()
            content = answer.read()
            if fault == "lose":
                self.close_connection = True
                return
            self._answer(answer.status, content, dict(answer.getheaders()))
        except OSError:
            self.close_connection = True
        finally:
            line.close()

    def _answer(self, status: int, content: bytes, headers: dict[str, str]) -> None:
        self.send_response_only(status)
        for key, value in headers.items():
            if key.lower() not in HOP:
                self.send_header(key, value)
        self.send_header("Content-Length", str(len(content)))
        self.end_headers()
        if self.command != "HEAD":
            self.wfile.write(content)

    def log_message(self, *_: object) -> None:
        """Quiet."""
