"""Listening on an address, and the server on it until it is told to end."""

import errno
import socket

import uvicorn
from fastapi import FastAPI

SECONDS_TO_END = 5
"""How long requests may take to finish once the server is told to end."""

HIGHEST_PORT = 65535


class AddressTaken(Exception):
    """An address on which nothing can listen."""


def listener(host: str, port: int, may_move: bool) -> socket.socket:
    """A socket that listens, so that the address is good before it is told; port 0 is any free one.

    With `may_move` a port that is taken gives a free one; else, as for a host that is not here, raises AddressTaken.
    """
    if not 0 <= port <= HIGHEST_PORT:
        raise AddressTaken(f"--port: found {port}, expected 0 to {HIGHEST_PORT}")
    try:
        return _listening(host, port)
    except OSError as error:
        if may_move and error.errno == errno.EADDRINUSE:
            return listener(host, 0, may_move=False)
        raise AddressTaken(f"{host}, port {port}: found {_why(error)}, expected an address to listen on") from error


def serve(app: FastAPI, held: socket.socket) -> None:
    """Answers requests until the process is told to end; raises KeyboardInterrupt when that is by Ctrl-C."""
    config = uvicorn.Config(app, log_level="warning", timeout_graceful_shutdown=SECONDS_TO_END)
    uvicorn.Server(config).run(sockets=[held])


def _listening(host: str, port: int) -> socket.socket:
    family, kind, protocol, _, address = socket.getaddrinfo(host, port, type=socket.SOCK_STREAM)[0]
    held = socket.socket(family, kind, protocol)
    try:
        held.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        held.bind(address)
        held.listen(128)
    except BaseException:
        held.close()
        raise
    return held


def _why(error: OSError) -> str:
    return (error.strerror or str(error)).lower()
