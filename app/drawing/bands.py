"""A layer cut into level bands, so that a page need swap only the bands that an edit changed."""

import numpy as np

from app.drawing.marks import Areas, Boxes, Floats, Layer, Mark

BANDS = 10


def banded(layer: Layer, height: float) -> tuple[Layer, ...]:
    """The layer as BANDS layers, named `<name>-<band>` from the foot up; shapes go by where their foot is, inches.

    Marks of one shape stay in the lowest band.
    """
    split = [_split(mark, height) for mark in layer.marks]
    return tuple(Layer(f"{layer.name}-{k}", tuple(parts[k] for parts in split if k in parts)) for k in range(BANDS))


def _split(mark: Mark, height: float) -> dict[int, Mark]:
    if isinstance(mark, Boxes):
        band = _band(mark.y, height)
        return {k: _boxes(mark, band == k) for k in np.unique(band).tolist()}
    if isinstance(mark, Areas) and len(mark.count):
        first = np.cumsum(mark.count) - mark.count
        band = _band(np.minimum.reduceat(mark.points[:, 1], first), height)
        return {k: _areas(mark, band == k) for k in np.unique(band).tolist()}
    return {0: mark}


def _band(y: Floats, height: float) -> "np.ndarray[tuple[int], np.dtype[np.int64]]":
    return np.clip((y * BANDS / height).astype(np.int64), 0, BANDS - 1)


def _boxes(mark: Boxes, chosen: "np.ndarray[tuple[int], np.dtype[np.bool_]]") -> Boxes:
    return Boxes(mark.x[chosen], mark.y[chosen], mark.width[chosen], mark.height[chosen], mark.style)


def _areas(mark: Areas, chosen: "np.ndarray[tuple[int], np.dtype[np.bool_]]") -> Areas:
    return Areas(mark.points[np.repeat(chosen, mark.count)], mark.count[chosen], mark.style)
