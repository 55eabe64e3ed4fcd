"""Shapes a person draws on a face: rectangle, polygon, circle, arch. All lengths in the face frame."""

from dataclasses import dataclass

from app.lengths import Length

Point = tuple[Length, Length]


@dataclass(frozen=True, slots=True)
class Rect:
    """Lower-left corner, width and height."""

    x: Length
    y: Length
    width: Length
    height: Length


@dataclass(frozen=True, slots=True)
class Polygon:
    """A simple polygon, either way round, not closed (the last point is not the first again)."""

    points: tuple[Point, ...]


@dataclass(frozen=True, slots=True)
class Circle:
    """Centre and radius."""

    x: Length
    y: Length
    radius: Length


@dataclass(frozen=True, slots=True)
class Arch:
    """A rectangle headed by an arc: `height` is to the crown, `rise` from springing to crown, at most half `width`."""

    x: Length
    y: Length
    width: Length
    height: Length
    rise: Length


Shape = Rect | Polygon | Circle | Arch
