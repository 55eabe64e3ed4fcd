"""Marks moved across the paper: panels of a wall beside each other."""

from dataclasses import replace
from functools import singledispatch

import numpy as np

from app.drawing.marks import Areas, Boxes, Circle, Letters, Lines, Mark, Text


@singledispatch
def moved(mark: Mark, dx: float, dy: float) -> Mark:
    """The mark moved by dx across and dy up, inches."""
    raise TypeError(f"mark {type(mark).__name__} moved by {dx:g}, {dy:g} in: expected one of the marks")


@moved.register
def _(mark: Boxes, dx: float, dy: float) -> Mark:
    return replace(mark, x=mark.x + dx, y=mark.y + dy)


@moved.register
def _(mark: Letters, dx: float, dy: float) -> Mark:
    return replace(mark, x=mark.x + dx, y=mark.y + dy)


@moved.register
def _(mark: Circle, dx: float, dy: float) -> Mark:
    return replace(mark, x=mark.x + dx, y=mark.y + dy)


@moved.register
def _(mark: Text, dx: float, dy: float) -> Mark:
    return replace(mark, x=mark.x + dx, y=mark.y + dy)


@moved.register
def _(mark: Areas, dx: float, dy: float) -> Mark:
    return replace(mark, points=mark.points + np.array([dx, dy]))


@moved.register
def _(mark: Lines, dx: float, dy: float) -> Mark:
    return replace(mark, points=mark.points + np.array([dx, dy]))
