"""Seams between liner sheets, each drawn once, so that broken lines do not fill each other's gaps."""

from collections.abc import Sequence

import numpy as np

from app.drawing.marks import Lines

Point = tuple[float, float]
Ring = tuple[Point, ...]
Span = tuple[float, float]


def seams(rings: Sequence[Ring]) -> Lines:
    """The edges of all rings in runs as long as may be; what an earlier ring has drawn is not drawn again.

    Level edges that overlap in part are drawn where they are new; other edges are known again only when equal.
    """
    if not rings:
        return Lines(np.zeros((0, 2)), np.zeros(0, dtype=np.int64), "sheet")
    corners = np.round(np.concatenate([np.asarray(ring) for ring in rings]), 4).tolist()
    drawn, runs, first = _Drawn(), [], 0
    for ring in rings:
        runs += drawn.new_runs([(x, y) for x, y in corners[first : first + len(ring)]])
        first += len(ring)
    points = np.array([point for run in runs for point in run], dtype=float).reshape(-1, 2)
    return Lines(points, np.array([len(run) for run in runs], dtype=np.int64), "sheet")


class _Drawn:
    """What is on the drawing so far."""

    def __init__(self) -> None:
        self._edges: set[tuple[Point, Point]] = set()
        self._levels: dict[float, list[Span]] = {}

    def new_runs(self, corners: list[Point]) -> list[list[Point]]:
        """The parts of a ring that are not drawn yet."""
        runs: list[list[Point]] = []
        for start, end in zip(corners, [*corners[1:], corners[0]], strict=True):
            edge = (start, end) if start < end else (end, start)
            if edge in self._edges:
                continue
            self._edges.add(edge)
            for first, last in self._new_level(start, end) if start[1] == end[1] else [(start, end)]:
                if runs and runs[-1][-1] == first:
                    runs[-1].append(last)
                else:
                    runs.append([first, last])
        return runs

    def _new_level(self, start: Point, end: Point) -> list[tuple[Point, Point]]:
        y, known = start[1], self._levels.setdefault(start[1], [])
        left, right = min(start[0], end[0]), max(start[0], end[0])
        fresh = _less(left, right, known)
        known += fresh
        if start[0] < end[0]:
            return [((a, y), (b, y)) for a, b in fresh]
        return [((b, y), (a, y)) for a, b in reversed(fresh)]


def _less(left: float, right: float, known: list[Span]) -> list[Span]:
    """A span less those that are known, left to right."""
    fresh: list[Span] = []
    for a, b in sorted(span for span in known if span[0] < right and span[1] > left):
        if a > left:
            fresh.append((left, a))
        left = max(left, b)
    return [*fresh, (left, right)] if left < right else fresh
