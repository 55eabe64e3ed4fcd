"""Cells of a layer: together they draw what the layer draws, each shape once and in one cell."""

from collections import Counter
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.drawing.cells import Grid, in_cells
from app.drawing.drawing import Drawing
from app.drawing.marks import Areas, Boxes, Layer, Letters, Lines, Mark, Text
from app.drawing.scales import Margins, Scale
from app.drawing.svg import svg_document, svg_layers

GRID = Grid(4, 3, 120.0, 90.0)

numbers = st.floats(-40, 160, allow_nan=False, width=32)
texts = st.builds(
    Text,
    numbers,
    numbers,
    st.text(st.characters(categories=("L", "N", "P", "S", "Zs")), min_size=1),
    st.sampled_from(["text", "text strong"]),
    st.sampled_from([2.5, 3.5]),
    st.sampled_from(["start", "middle", "end"]),
    st.sampled_from([0.0, 90.0]),
)


@st.composite
def many(draw: st.DrawFn) -> Mark:
    count = draw(st.integers(1, 30))
    rows = np.array(draw(st.lists(st.tuples(numbers, numbers), min_size=4 * count, max_size=4 * count)), dtype=float)
    kind = draw(st.sampled_from(["boxes", "letters", "areas", "lines"]))
    if kind == "boxes":
        size = np.abs(rows[count : 2 * count]) + 1
        return Boxes(rows[:count, 0], rows[:count, 1], size[:, 0], size[:, 1], "whole")
    if kind == "letters":
        letters = "".join(draw(st.lists(st.sampled_from("LHNS"), min_size=count, max_size=count)))
        return Letters(rows[:count, 0], rows[:count, 1], letters, "cut letter")
    counts = np.array(draw(st.lists(st.integers(2, 4), min_size=count, max_size=count)), dtype=np.int64)
    return (Areas if kind == "areas" else Lines)(rows[: counts.sum()], counts, "small")


def shapes(mark: Mark) -> list[tuple[object, ...]]:
    """Every shape of a mark by itself, with the place that its cell goes by."""
    match mark:
        case Boxes():
            rows = zip(mark.x, mark.y, mark.width, mark.height, strict=True)
            return [(x, y, "box", width, height) for x, y, width, height in rows]
        case Letters():
            return [(x, y, letter) for x, y, letter in zip(mark.x, mark.y, mark.letters, strict=True)]
        case Areas() | Lines():
            rings = np.split(mark.points, np.cumsum(mark.count)[:-1])
            return [(*ring.min(axis=0), type(mark).__name__, ring.tobytes()) for ring in rings]
        case Text():
            return [(mark.x, mark.y, mark)]
    raise AssertionError(mark)


def cell_by_hand(x: float, y: float) -> int:
    column = sum(x >= edge for edge in (30, 60, 90))
    row = sum(y >= edge for edge in (30, 60))
    return row * 4 + column


@given(st.lists(many() | texts, max_size=5))
def test_every_shape_is_drawn_once_in_the_cell_of_its_lower_left(marks: list[Mark]) -> None:
    cells = in_cells(Layer("some", tuple(marks)), GRID)
    assert [cell.name for cell in cells] == [f"some-{k}" for k in range(12)]
    found = [(k, shape) for k, cell in enumerate(cells) for mark in cell.marks for shape in shapes(mark)]
    wanted = [(cell_by_hand(shape[0], shape[1]), shape) for mark in marks for shape in shapes(mark)]
    assert Counter(found) == Counter(wanted)


@given(many())
def test_shapes_of_a_cell_keep_their_order(mark: Mark) -> None:
    for k, cell in enumerate(in_cells(Layer("some", (mark,)), GRID)):
        inside = [shape for shape in shapes(mark) if cell_by_hand(shape[0], shape[1]) == k]
        assert [shape for part in cell.marks for shape in shapes(part)] == inside


def test_words_alone_go_to_cells_above_all_shapes() -> None:
    box = Boxes(np.array([100.0]), np.array([80.0]), np.array([5.0]), np.array([5.0]), "label")
    word = Text(100.0, 80.0, "W1", "text")
    cells = in_cells(Layer("openings", (box, word)), GRID, words_only=True)
    assert (cells[0].marks, cells[11].marks) == ((box,), (word,))


@given(texts)
def test_a_text_that_is_filled_in_is_the_text_as_it_is_written(text: Text) -> None:
    live = Drawing("", "", 120.0, 90.0, Margins(0, 0, 0, 0), Scale(25.4, "1:25.4"), (Layer("some", (text,)),))
    (written,) = svg_layers(live).values()
    whole = svg_document(replace(live, layers=(Layer("some", (text,)),)))
    place = written.partition(" x=")[2].partition(" y=")[0]
    assert f"x={place}" in whole
    assert written.partition(">")[2] in whole


@pytest.mark.parametrize("kind", [Areas, Lines])
def test_a_layer_without_shapes_has_empty_cells(kind: type[Areas] | type[Lines]) -> None:
    nothing = kind(np.zeros((0, 2)), np.zeros(0, dtype=np.int64), "small")
    assert all(cell.marks == () for cell in in_cells(Layer("some", (nothing,)), GRID))
