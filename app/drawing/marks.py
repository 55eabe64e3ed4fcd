"""Neutral marks: what a drawing is made of, before it is any file.

Positions are inches in a frame with x right and y up (the face frame or the bed frame); sizes named `_mm` are on paper.
"""

from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from app.drawing.styles import Style

Floats = NDArray[np.float64]
Counts = NDArray[np.int64]
Anchor = Literal["start", "middle", "end"]

SMALL, NORMAL, LARGE = 2.5, 3.5, 5.0
"""Lettering heights on paper, mm: three steps of the ISO 3098 series."""


@dataclass(frozen=True, slots=True, eq=False)
class Boxes:
    """Many upright rectangles, lower-left corner and size."""

    x: Floats
    y: Floats
    width: Floats
    height: Floats
    style: Style


@dataclass(frozen=True, slots=True, eq=False)
class Areas:
    """Many polygons, ring after ring, not closed; `count` points each. A hole is a ring of its own (even-odd)."""

    points: Floats
    count: Counts
    style: Style


@dataclass(frozen=True, slots=True, eq=False)
class Lines:
    """Many open lines, one after the other; `count` points each."""

    points: Floats
    count: Counts
    style: Style


@dataclass(frozen=True, slots=True)
class Circle:
    """A circle of a fixed size on paper."""

    x: float
    y: float
    radius_mm: float
    style: Style


@dataclass(frozen=True, slots=True)
class Text:
    """One line of text; y is the middle of its capitals, `angle` degrees anticlockwise about (x, y)."""

    x: float
    y: float
    text: str
    style: Style
    size_mm: float = SMALL
    anchor: Anchor = "middle"
    angle: float = 0.0


@dataclass(frozen=True, slots=True, eq=False)
class Letters:
    """Many single letters of one size, each centred on its point."""

    x: Floats
    y: Floats
    letters: str
    style: Style
    size_mm: float = SMALL


Mark = Boxes | Areas | Lines | Circle | Text | Letters


@dataclass(frozen=True, slots=True)
class Layer:
    """Marks that are shown and hidden together."""

    name: str
    marks: tuple[Mark, ...]


def box(x: float, y: float, width: float, height: float, style: Style) -> Boxes:
    """One rectangle."""
    return Boxes(np.array([x]), np.array([y]), np.array([width]), np.array([height]), style)


def area(points: list[tuple[float, float]], style: Style) -> Areas:
    """One polygon."""
    return Areas(np.array(points, dtype=float), np.array([len(points)]), style)


def line(points: list[tuple[float, float]], style: Style) -> Lines:
    """One open line."""
    return Lines(np.array(points, dtype=float), np.array([len(points)]), style)


def segments(ends: list[tuple[float, float, float, float]], style: Style) -> Lines:
    """Many straight lines, each x0, y0, x1, y1; none for an empty list."""
    points = np.array(ends, dtype=float).reshape(-1, 2)
    return Lines(points, np.full(len(ends), 2), style)


def content(mark: Mark) -> tuple[object, ...]:
    """All that a mark says, as a key: two marks with the same content look the same."""
    match mark:
        case Text():
            return (mark.text, mark.x, mark.y, mark.style, mark.size_mm, mark.anchor, mark.angle)
        case Boxes():
            sides = (mark.x, mark.y, mark.width, mark.height)
            return (Boxes, mark.style, *[side.tobytes() for side in sides])
        case Letters():
            return (Letters, mark.style, mark.x.tobytes(), mark.y.tobytes(), mark.letters, mark.size_mm)
        case Circle():
            return (Circle, mark.x, mark.y, mark.radius_mm, mark.style)
        case _:
            return (type(mark), mark.style, mark.points.tobytes(), mark.count.tobytes())
