"""From face to bed: every mark mirrored about the panel's middle, `x_bed = width - x_face`; text stays upright."""

from dataclasses import replace
from functools import singledispatch
from typing import TypeVar, cast

import numpy as np

from app.drawing.marks import Anchor, Areas, Boxes, Circle, Letters, Lines, Mark, Text

MarkT = TypeVar("MarkT", bound=Mark)

_OTHER_SIDE: dict[Anchor, Anchor] = {"start": "end", "middle": "middle", "end": "start"}


def mirrored(mark: MarkT, width: float) -> MarkT:
    """The mark as seen from the back of a panel `width` inches wide; mirrored twice it is the same."""
    return cast(MarkT, _mirrored(mark, width))


@singledispatch
def _mirrored(mark: Mark, width: float) -> Mark:
    raise TypeError(f"mark {type(mark).__name__} in a panel {width:g} in wide: expected one of the marks")


@_mirrored.register
def _(mark: Boxes, width: float) -> Mark:
    return replace(mark, x=width - mark.x - mark.width)


@_mirrored.register
def _(mark: Areas, width: float) -> Mark:
    return replace(mark, points=_turned_over(mark.points, width))


@_mirrored.register
def _(mark: Lines, width: float) -> Mark:
    return replace(mark, points=_turned_over(mark.points, width))


@_mirrored.register
def _(mark: Circle, width: float) -> Mark:
    return replace(mark, x=width - mark.x)


@_mirrored.register
def _(mark: Text, width: float) -> Mark:
    return replace(mark, x=width - mark.x, anchor=_OTHER_SIDE[mark.anchor], angle=-mark.angle)


@_mirrored.register
def _(mark: Letters, width: float) -> Mark:
    return replace(mark, x=width - mark.x)


def _turned_over(points: np.ndarray, width: float) -> np.ndarray:
    return np.column_stack([width - points[:, 0], points[:, 1]])
