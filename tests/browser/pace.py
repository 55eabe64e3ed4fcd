"""How fast the machine is at this moment, so that a limit in milliseconds means the same on every one."""

from time import process_time

REFERENCE = 0.042
"""Seconds of processor that `work` takes on the two cores on which the limits were set, with nothing beside it."""


def work() -> float:
    """Seconds of processor for a fixed piece of work: small objects made and looked up, as a server does."""
    started, table = process_time(), dict[int, tuple[int, str]]()
    for k in range(200_000):
        table[k & 1023] = (k, str(k))
        table.get(k & 511)
    return process_time() - started


def slowness(times: list[float]) -> float:
    """How many times slower than the reference the machine was over these pieces of work; never below 1."""
    return max(1.0, sorted(times)[len(times) // 2] / REFERENCE)
