"""How much of one shape lies on another, or beyond it, where slanted or curved cuts leave it to be measured."""

from collections.abc import Callable
from math import inf

import shapely
from shapely.geometry.base import BaseGeometry

_GRIDS = (1e-8, 1e-7, 1e-6, None)
"""Inches; nearly equal slants are compared on a grid, as plain floats can fail there; a finer one can fail too, where
the next does not."""


def shared_area(one: BaseGeometry, two: BaseGeometry) -> float:
    """Square inches of both; without end where it cannot be measured, so that nothing is laid there."""
    return _area(shapely.intersection, one, two)


def area_beyond(one: BaseGeometry, two: BaseGeometry) -> float:
    """Square inches of the first that are not on the second; without end where it cannot be measured."""
    return _area(shapely.difference, one, two)


def _area(compared: Callable[..., BaseGeometry], one: BaseGeometry, two: BaseGeometry) -> float:
    for grid in _GRIDS:
        try:
            return float(compared(one, two, grid_size=grid).area)
        except shapely.errors.GEOSException:
            continue
    return inf
