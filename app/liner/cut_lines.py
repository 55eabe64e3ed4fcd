"""Along which lines a sheet is cut so that all its pieces come free, each line once. See `cut_lines`."""

from collections.abc import Iterator, Sequence

import numpy as np
import shapely

from app.brickwork.lattice import Flags, Floats
from app.liner.cuts import Cut, straight_cut
from app.liner.trims import shapes_of

NEAR = 1e-3
"""Inches; sides this near to one line are one cut, far finer than a knife, far over round-off of moved rings."""

Spans = list[tuple[float, float]]


def cut_lines(outline: Floats, pieces: Sequence[Sequence[Floats]]) -> tuple[Cut, ...]:
    """The cuts that free all pieces, given as rings each, from the sheet of this outline; one ruler's line is one cut.

    Where two pieces meet there is one cut, along the sheet's own edge none. A cut runs on through waste and past the
    sheet's teeth to the next part of its line, never into a piece. In the order of a knife; none for no pieces.
    """
    rings = [ring for piece in pieces for ring in piece]
    if not rings:
        return ()
    kept = shapely.union_all(shapes_of(pieces, [len(piece) > 1 for piece in pieces]), grid_size=1e-6)
    inner = shapely.buffer(kept, -NEAR, join_style="mitre")
    shapely.prepare(inner)
    own = _sides(outline)
    found = (
        cut
        for line, spans in _lines(np.concatenate([_sides(ring) for ring in rings]))
        for cut in _along(line, spans, own, inner)
    )
    return _in_knife_order(list(found), outline)


def _sides(ring: Floats) -> Floats:
    return np.stack([ring, np.roll(ring, -1, axis=0)], axis=1)


def _lines(sides: Floats) -> Iterator[tuple[Floats, Spans]]:
    """Each line by its longest side, and from and to how far along it the sides on it reach."""
    run = sides[:, 1] - sides[:, 0]
    rest = sides[np.argsort(-np.hypot(run[:, 0], run[:, 1]).round(4), kind="stable")]
    while len(rest):
        on, spans = _on_line(rest[0], rest)
        yield rest[0], spans
        rest = rest[~on]


def _on_line(line: Floats, sides: Floats) -> tuple[Flags, Spans]:
    """Which sides lie on the line through another, and their spans along it."""
    along = (line[1] - line[0]) / max(float(np.hypot(*(line[1] - line[0]))), NEAR)
    off = sides - line[0]
    on = (np.abs(off @ np.array([-along[1], along[0]])) <= NEAR).all(axis=1)
    return on, [(min(a, b), max(a, b)) for a, b in (off[on] @ along).tolist()]


def _along(line: Floats, spans: Spans, own: Floats, inner: shapely.Geometry) -> Iterator[Cut]:
    """The cuts along one line."""
    along = (line[1] - line[0]) / max(float(np.hypot(*(line[1] - line[0]))), NEAR)
    wanted = _less(_joined(spans), _on_line(line, own)[1])
    cuts: Spans = []
    for start, end in wanted:
        if cuts and _is_clear(line[0] + along * cuts[-1][1], line[0] + along * start, inner):
            cuts[-1] = cuts[-1][0], end
        else:
            cuts.append((start, end))
    for start, end in cuts:
        yield straight_cut(*sorted((_point(line[0] + along * start), _point(line[0] + along * end))))


def _point(at: Floats) -> tuple[float, float]:
    return float(at[0]), float(at[1])


def _is_clear(start: Floats, end: Floats, inner: shapely.Geometry) -> bool:
    """Whether a knife may run on from one point to the other."""
    return not shapely.intersects(inner, shapely.LineString([start, end]))


def _joined(spans: Spans) -> Spans:
    joined: Spans = []
    for low, high in sorted(spans):
        if joined and low <= joined[-1][1] + NEAR:
            joined[-1] = joined[-1][0], max(high, joined[-1][1])
        else:
            joined.append((low, high))
    return joined


def _less(spans: Spans, taken: Spans) -> Spans:
    """What of the spans is not in the others; nothing shorter than `NEAR`."""
    for low, high in _joined(taken):
        spans = [part for start, end in spans for part in ((start, min(end, low)), (max(start, high), end))]
        spans = [(start, end) for start, end in spans if end - start > NEAR]
    return spans


def _in_knife_order(cuts: list[Cut], outline: Floats) -> tuple[Cut, ...]:
    """First those that run from edge to edge of what those before them leave, the longest first; where there is none,
    the longest one."""
    edges: shapely.Geometry = shapely.LinearRing(outline)
    ordered: list[Cut] = []
    rest = sorted(cuts, key=lambda cut: (-round(_line(cut).length, 3), cut.start, cut.end))
    while rest:
        through = [cut for cut in rest if _reaches(cut, edges)] or rest[:1]
        ordered += through
        rest = [cut for cut in rest if cut not in through]
        edges = shapely.union_all([edges, *map(_line, through)])
    return tuple(ordered)


def _line(cut: Cut) -> shapely.LineString:
    return shapely.LineString([cut.start, cut.end])


def _reaches(cut: Cut, edges: shapely.Geometry) -> bool:
    return all(edges.distance(shapely.Point(end)) <= 2 * NEAR for end in (cut.start, cut.end))
