"""The sizes of small pieces, written here and there where no brick is hidden by them."""

from collections.abc import Iterator

import numpy as np
from numpy.typing import NDArray

from app.brickwork.pieces import bounds
from app.drawing.board import Board, text_box
from app.drawing.declutter import sparse
from app.drawing.layers import openings
from app.drawing.lettering import lettered, text_width_mm
from app.drawing.marks import SMALL, Anchor, Floats, Mark, Text, box
from app.drawing.scene import Scene
from app.panel.rings import is_within

FRAME = "face"

REACH_MM, BESIDE_MM = 2.2, 1.0
"""Least distance from a small piece's middle to its size, and from its edge, mm."""

SIDES: tuple[tuple[float, float, Anchor], ...] = (
    (-1, 0, "end"),
    (1, 0, "start"),
    (0, 1, "middle"),
    (0, -1, "middle"),
    (-1, 1, "end"),
    (1, 1, "start"),
    (-1, -1, "end"),
    (1, -1, "start"),
)
"""Beside, above, below and aslant, in reaches from the piece."""

BACK: dict[Anchor, float] = {"start": 0.0, "middle": 0.5, "end": 1.0}
"""How much of a text lies left of where it is anchored."""

CLEAR_MM, AGAIN_MM = 6.0, 30.0
"""Sizes stand this far apart; an equal one is written again after this distance, mm."""

HALF_MM = 1.4
"""Half the height of a size with air, mm."""


def marks(scene: Scene) -> Iterator[Mark]:
    """In an opening or past a slope beside the piece; else on a label on the brick above it; none where sizes
    would touch or cross an edge."""
    trims = scene.layout.trims
    if not trims.is_small.any():
        return
    x0, y0, x1, y1 = bounds(trims.pieces.take(trims.is_small))
    x, y = (x0 + x1) / 2, (y0 + y1) / 2
    lengths = [lettered(length, scene.unit) for length in trims.length[trims.is_small].tolist()]
    reach = np.maximum(scene.mm(REACH_MM), np.maximum(x1 - x0, y1 - y0) / 2 + scene.mm(BESIDE_MM))
    free = _free_sides(scene, x, y, reach, lengths)
    order = np.argsort(~free.any(axis=1), kind="stable").tolist()
    kinds = [lengths[k] for k in order]
    shown = sparse(x[order].tolist(), y[order].tolist(), kinds, scene.mm(CLEAR_MM), scene.mm(AGAIN_MM))
    board = Board(scene.mm(10), [text_box(scene, text) for text in openings.lettering(scene)])
    places, fits = np.column_stack([x, y, reach]).tolist(), free.tolist()
    for k in (order[n] for n in shown):
        sides = [side for side, is_free in enumerate(fits[k]) if is_free]
        yield from _size(scene, board, tuple(places[k]), lengths[k], sides)


def _size(
    scene: Scene, board: Board, place: tuple[float, float, float], words: str, sides: list[int]
) -> Iterator[Mark]:
    x, y, reach = place
    for dx, dy, anchor in (SIDES[side] for side in sides):
        text = Text(x + dx * reach, y + dy * reach, words, "text small", SMALL, anchor)
        if board.took(text_box(scene, text)):
            yield text
            return
    if sides:
        return
    text = Text(x, y + reach, words, "text small")
    left, low, right, high = text_box(scene, text)
    corner_x, corner_y = np.array([left, right, left, right]), np.array([low, low, high, high])
    is_on_brick = is_within(scene.layout.field, corner_x, corner_y).all()
    if is_on_brick and board.took((left, low, right, high)):
        yield box(left, low, right - left, high - low, "label")
        yield text


def _free_sides(scene: Scene, x: Floats, y: Floats, reach: Floats, lengths: list[str]) -> NDArray[np.bool_]:
    """Whether a size fits at each side of each piece: no brick there, and within the panel's extent, so that it does
    not run among pole, tape or words. Shape (pieces, sides)."""
    wide = np.array([text_width_mm(words, SMALL) for words in lengths]) * scene.mm(1)
    half, reach = scene.mm(HALF_MM), reach[:, None]
    dx, dy, back = (np.array(column) for column in zip(*((a, b, BACK[anchor]) for a, b, anchor in SIDES), strict=True))
    left = x[:, None] + dx * reach - wide[:, None] * back
    corner_x = np.stack([left, left, left + wide[:, None], left + wide[:, None]])
    corner_y = y[:, None] + dy * reach + np.array([-half, half, -half, half])[:, None, None]
    is_beside = (corner_x > 0) & (corner_x < scene.width) & (corner_y > 0) & (corner_y < scene.height)
    free: NDArray[np.bool_] = is_beside.all(axis=0)
    for x_now, y_now in zip(corner_x, corner_y, strict=True):
        free[free] = ~is_within(scene.layout.field, x_now[free], y_now[free])
    return free
