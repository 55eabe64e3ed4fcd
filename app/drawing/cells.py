"""A layer cut into cells of a grid, so that a page need swap only the cells that an edit changed."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from app.drawing.marks import Areas, Boxes, Circle, Floats, Layer, Letters, Lines, Mark, Text

Cells = NDArray[np.int64]


@dataclass(frozen=True, slots=True)
class Grid:
    """Equal cells over a panel of `width` by `height` inches, numbered row by row from the lower left.

    Of what stands outside the panel, each goes with the cell nearest to it.
    """

    columns: int
    rows: int
    width: float
    height: float

    def cells(self, x: Floats, y: Floats) -> Cells:
        """The number of the cell of each point."""
        across = np.minimum(np.maximum(x * (self.columns / self.width), 0), self.columns - 1).astype(np.int64)
        up = np.minimum(np.maximum(y * (self.rows / self.height), 0), self.rows - 1).astype(np.int64)
        numbers: Cells = up * self.columns + across
        return numbers

    def cell(self, x: float, y: float) -> int:
        """The number of the cell of one point."""
        columns, rows = self.columns, self.rows
        across, up = int(x * (columns / self.width)), int(y * (rows / self.height))
        across = 0 if across < 0 else columns - 1 if across >= columns else across
        return (0 if up < 0 else rows - 1 if up >= rows else up) * columns + across


def in_cells(layer: Layer, grid: Grid, words_only: bool = False) -> tuple[Layer, ...]:
    """The layer as one layer a cell, named `<name>-<cell>`; a shape goes by the lower left of its box, inches.

    Shapes that lie over each other are stacked by their cells. With `words_only` every shape stays below all words,
    in the first cell.
    """
    cells: list[list[Mark]] = [[] for _ in range(grid.columns * grid.rows)]
    for mark in layer.marks:
        if isinstance(mark, Text):
            cells[grid.cell(mark.x, mark.y)].append(mark)
        elif words_only:
            cells[0].append(mark)
        else:
            for k, part in _split(mark, grid):
                cells[k].append(part)
    names = _cell_names(layer.name, len(cells))
    return tuple(Layer(name, tuple(marks)) if marks else _empty(name) for name, marks in zip(names, cells, strict=True))


@lru_cache(maxsize=256)
def _cell_names(layer: str, cells: int) -> tuple[str, ...]:
    return tuple(f"{layer}-{k}" for k in range(cells))


@lru_cache(maxsize=4096)
def _empty(name: str) -> Layer:
    return Layer(name, ())


def _split(mark: Mark, grid: Grid) -> Iterator[tuple[int, Mark]]:
    match mark:
        case Text() | Circle():
            yield grid.cell(mark.x, mark.y), mark
        case Boxes():
            yield from _boxes(mark, grid.cells(mark.x, mark.y))
        case Letters():
            yield from _letters(mark, grid.cells(mark.x, mark.y))
        case Areas() | Lines() if len(mark.count):
            first = np.cumsum(mark.count) - mark.count
            low = np.minimum.reduceat(mark.points, first, axis=0)
            yield from _rings(mark, grid.cells(low[:, 0], low[:, 1]))


def _boxes(mark: Boxes, cells: Cells) -> Iterator[tuple[int, Mark]]:
    order, runs = _runs(cells)
    x, y, width, height = (values[order] for values in (mark.x, mark.y, mark.width, mark.height))
    for k, run in runs:
        yield k, Boxes(x[run], y[run], width[run], height[run], mark.style)


def _letters(mark: Letters, cells: Cells) -> Iterator[tuple[int, Mark]]:
    order, runs = _runs(cells)
    x, y, letters = mark.x[order], mark.y[order], "".join(map(mark.letters.__getitem__, order.tolist()))
    for k, run in runs:
        yield k, replace(mark, x=x[run], y=y[run], letters=letters[run])


def _rings(mark: Areas | Lines, cells: Cells) -> Iterator[tuple[int, Mark]]:
    order, runs = _runs(cells)
    of_points = np.repeat(cells, mark.count)
    points, count = mark.points[np.argsort(of_points, kind="stable")], mark.count[order]
    made: Callable[..., Mark] = type(mark)
    ends = [0, *np.cumsum(count).tolist()]
    for k, run in runs:
        yield k, made(points[ends[run.start] : ends[run.stop]], count[run], mark.style)


def _runs(cells: Cells) -> tuple[Cells, list[tuple[int, slice]]]:
    """An order cell by cell, and where each cell lies in it."""
    order = np.argsort(cells, kind="stable")
    inside = cells[order]
    later = (np.flatnonzero(inside[1:] != inside[:-1]) + 1).tolist()
    starts = [0, *later] if len(cells) else []
    pairs = zip(inside[starts].tolist() if starts else (), starts, [*later, len(cells)], strict=False)
    return order, [(k, slice(start, stop)) for k, start, stop in pairs]
