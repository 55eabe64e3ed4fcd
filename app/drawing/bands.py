"""A layer cut into level bands, so that a page need swap only the bands that an edit changed."""

import numpy as np

from app.drawing.marks import Areas, Boxes, Floats, Layer, Lines, Mark, Text

BANDS = 6


def banded(layer: Layer, height: float) -> tuple[Layer, ...]:
    """The layer as BANDS layers, named `<name>-<band>` from the foot up; shapes go by where their foot is, inches.

    Marks of many letters and circles stay in the lowest band.
    """
    bands: list[list[Mark]] = [[] for _ in range(BANDS)]
    for mark in layer.marks:
        for k, part in _split(mark, height).items():
            bands[k].append(part)
    return tuple(Layer(f"{layer.name}-{k}", tuple(marks)) for k, marks in enumerate(bands))


def _split(mark: Mark, height: float) -> dict[int, Mark]:
    if isinstance(mark, Boxes):
        band = _band(mark.y, height)
        return {k: _boxes(mark, band == k) for k in np.unique(band).tolist()}
    if isinstance(mark, Areas) and len(mark.count):
        first = np.cumsum(mark.count) - mark.count
        band = _band(np.minimum.reduceat(mark.points[:, 1], first), height)
        return {k: _areas(mark, band == k) for k in np.unique(band).tolist()}
    if isinstance(mark, Lines) and len(mark.count):
        band = _band(mark.points[np.cumsum(mark.count) - mark.count, 1], height)
        return {k: _lines(mark, band == k) for k in np.unique(band).tolist()}
    return {_band(np.array([mark.y]), height)[0]: mark} if isinstance(mark, Text) else {0: mark}


def _band(y: Floats, height: float) -> "np.ndarray[tuple[int], np.dtype[np.int64]]":
    return np.clip((y * BANDS / height).astype(np.int64), 0, BANDS - 1)


def _boxes(mark: Boxes, chosen: "np.ndarray[tuple[int], np.dtype[np.bool_]]") -> Boxes:
    return Boxes(mark.x[chosen], mark.y[chosen], mark.width[chosen], mark.height[chosen], mark.style)


def _lines(mark: Lines, chosen: "np.ndarray[tuple[int], np.dtype[np.bool_]]") -> Lines:
    return Lines(mark.points[np.repeat(chosen, mark.count)], mark.count[chosen], mark.style)


def _areas(mark: Areas, chosen: "np.ndarray[tuple[int], np.dtype[np.bool_]]") -> Areas:
    return Areas(mark.points[np.repeat(chosen, mark.count)], mark.count[chosen], mark.style)
