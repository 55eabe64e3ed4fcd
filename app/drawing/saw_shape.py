"""A brick that is ripped, notched or cut aslant: what is left of it, measured from the brick's own corner."""

from collections.abc import Iterator, Sequence
from itertools import groupby

from app.drawing.marks import SMALL, Mark, Text, area
from app.drawing.saw_figure import SIDE_MM, Figure, Pen, along, framed, rim, upright
from app.drawing.saw_places import places_in_words
from app.drawing.styles import CUT_LETTERS, CUT_STYLES, Style
from app.order.saw_curves import curve_points
from app.order.saw_values import Point, SawPiece

ON_EDGE = 1 / 32
"""Inches: half a step of the saw; a point this near to an edge is measured as if it were on it."""

LETTER_MM = 2.6
"""A piece at least this long and high on paper has its letter in it, mm."""


def shape_figure(piece: SawPiece, pen: Pen) -> Figure:
    """One group with its measures: places along an edge from the left, up an end from below."""
    marks = [area(list(piece.outline), CUT_STYLES[piece.cut]), rim(piece.whole)]
    if min(piece.length, piece.height) >= pen.mm(LETTER_MM):
        marks.append(Text(*piece.middle, CUT_LETTERS[piece.cut], "cut letter", SMALL))
    places = _places(piece.outline, piece.whole)
    return framed(pen, piece.whole, (*marks, *_measures(places, piece.whole, pen)), _words(piece, pen), bool(places[1]))


def _words(piece: SawPiece, pen: Pen) -> tuple[tuple[str, Style], ...]:
    pieces = f"{piece.count:,} {'piece' if piece.count == 1 else 'pieces'}, {piece.brick}"
    size = f"{pen.words(piece.length)} x {pen.words(piece.height)}"
    where = places_in_words(piece.seats, piece.whole[0] / pen.mm(1) + 2 * SIDE_MM)
    return (pieces, "text strong"), (size, "text"), (where, "text quiet")


def _places(outline: Sequence[Point], whole: tuple[float, float]) -> tuple[list[float], ...]:
    """Where to measure along the lower and the upper edge and up the left and the right end: every corner of the cut
    and the middle of a curve, on the edge it lies on, or, inside the brick, below and at the left."""
    length, height = whole
    corners = [point for point in _told(outline) if not _is_own(point, whole)]
    low = [x for x, y in corners if y <= ON_EDGE or _is_inside((x, y), whole)]
    high = [x for x, y in corners if y >= height - ON_EDGE and x not in low]
    left = [y for x, y in corners if x <= ON_EDGE or _is_inside((x, y), whole)]
    right = [y for x, y in corners if x >= length - ON_EDGE and y not in left]
    return low, high, left, right


def _told(outline: Sequence[Point]) -> Iterator[Point]:
    """The corners, and of each run of points on a curve the middle one."""
    on_curve = curve_points(outline)
    start = on_curve.index(False) if False in on_curve else 0
    ring = [*zip(outline, on_curve, strict=True)]
    for is_curve, run in groupby(ring[start:] + ring[:start], key=lambda row: row[1]):
        points = [point for point, _ in run]
        yield from points[len(points) // 2 :][:1] if is_curve else points


def _measures(places: Sequence[list[float]], whole: tuple[float, float], pen: Pen) -> Iterator[Mark]:
    low, high, left, right = places
    yield from along(pen, low, 0.0)
    yield from along(pen, high, whole[1], is_above=True)
    yield from upright(pen, left, 0.0)
    yield from upright(pen, right, whole[0], is_right=True)


def _is_own(point: Point, whole: tuple[float, float]) -> bool:
    """Whether it is a corner of the whole brick."""
    return all(min(abs(at), abs(at - end)) <= ON_EDGE for at, end in zip(point, whole, strict=True))


def _is_inside(point: Point, whole: tuple[float, float]) -> bool:
    return all(ON_EDGE < at < end - ON_EDGE for at, end in zip(point, whole, strict=True))
