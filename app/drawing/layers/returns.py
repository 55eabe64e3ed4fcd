"""The returns of a face, each folded out beside its edge: beyond the panel, or into the opening whose side it is."""

from collections.abc import Iterator, Sequence
from itertools import groupby

import numpy as np

from app.brickwork.returns import Leg, Return, ReturnPiece, returns
from app.drawing.board import Board, text_box
from app.drawing.layers import openings
from app.drawing.lettering import lettered, text_width_mm
from app.drawing.marks import SMALL, Boxes, Mark, Text, box, line, segments
from app.drawing.scene import Scene
from app.drawing.styles import Style

FRAME = "face"

DIMENSION_MM, TICK_MM, WORDS_MM = 3.0, 1.2, 3.4
"""From the foot of a return down to its dimension, half a tick's length, and from its far edge to its words, mm."""

ROOM_MM = 3.0
"""Words on a return's outer side take this much beyond `WORDS_MM`, mm."""

Box = tuple[float, float, float, float, Style]
"""Distance from the fold, bottom, length, height, and how it is drawn."""


def marks(scene: Scene) -> Iterator[Mark]:
    """Ground, brick, fold line, words and depth of every return; none for a panel without returns."""
    for one in returns(scene.layout):
        left = one.edge_at - (one.depth if one.hand == "left" else 0.0)
        yield box(left, one.bottom, one.depth, one.top - one.bottom, "concrete")
        yield from _bricks(one)
        yield _rim(one)
        yield segments([(one.edge_at, one.bottom, one.edge_at, one.top)], "rule")
        yield from _words(scene, one)
        yield from _dimension(scene, one)


def outward(one: Return) -> int:
    """The way a return folds out: 1 to the right, -1 to the left."""
    return 1 if one.hand == "right" else -1


def _rim(one: Return) -> Mark:
    """Foot, far edge and top; the fold is left to a thin line."""
    near, far = one.edge_at, one.edge_at + outward(one) * one.depth
    return line([(near, one.bottom), (far, one.bottom), (far, one.top), (near, one.top)], "opening rim")


def _bricks(one: Return) -> Iterator[Boxes]:
    """One mark a style."""
    boxes = [*map(_leg, one.legs), *map(_piece, one.pieces)]
    for _, of_style in groupby(sorted(boxes, key=lambda row: row[4]), key=lambda row: row[4]):
        yield _together(one, list(of_style))


def _leg(leg: Leg) -> Box:
    style: Style = "trimmed length" if leg.is_shortened or leg.is_cut else "whole"
    return 0.0, leg.bottom, leg.return_leg, leg.height, style


def _piece(piece: ReturnPiece) -> Box:
    return piece.start, piece.bottom, piece.length, piece.height, "trimmed length" if piece.is_trimmed else "whole"


def _together(one: Return, boxes: Sequence[Box]) -> Boxes:
    start, bottom, length, height = (np.array(column) for column in zip(*(row[:4] for row in boxes), strict=True))
    left = one.edge_at + (start if one.hand == "right" else -start - length)
    return Boxes(left, bottom, length, height, boxes[0][4])


def _words(scene: Scene, one: Return) -> Iterator[Text]:
    """Standing beside the return; inside an opening only words that fit there, clear of the opening's own."""
    x = one.edge_at + outward(one) * (one.depth + scene.mm(WORDS_MM))
    deep = f"{lettered(one.depth, scene.unit)} deep"
    lines = [
        Text(x, (one.bottom + one.top) / 2, words, "text", SMALL, "middle", 90)
        for words in (f"return {one.name}, {deep}", deep)
    ]
    yield from [text for text in lines if not one.opening or _fits(scene, one, text)][:1]


def _fits(scene: Scene, one: Return, text: Text) -> bool:
    half_long, half_high = scene.mm(text_width_mm(text.text, SMALL)) / 2, scene.mm(0.55 * SMALL)
    beside = text.x - half_high, text.y - half_long, text.x + half_high, text.y + half_long
    board = Board(scene.mm(10), [text_box(scene, other) for other in openings.lettering(scene)])
    return half_long <= (one.top - one.bottom) / 2 and board.is_free(beside)


def _dimension(scene: Scene, one: Return) -> Iterator[Mark]:
    """Under the foot of a return at the panel's edge; that of an opening's side stands in its words alone."""
    if not one.opening:
        y, tick = one.bottom - scene.mm(DIMENSION_MM), scene.mm(TICK_MM)
        near, far = one.edge_at, one.edge_at + outward(one) * one.depth
        yield segments([(near, y, far, y), *((x, y - tick, x, y + tick) for x in (near, far))], "rule")
        yield Text((near + far) / 2, y - scene.mm(3.0), lettered(one.depth, scene.unit), "text", SMALL)
