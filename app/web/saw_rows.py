"""Rows of the saw list's table: equal pieces, how many, from what, and where they go."""

from collections.abc import Iterator
from dataclasses import dataclass

from app.drawing.saw_places import places_in_words
from app.drawing.styles import CUT_LETTERS
from app.lengths import format_length
from app.order.saw_values import CornerCut, SawList, SawPiece, Seat, brick_words
from app.web.words import counted

PLACES = 6
"""So many places stand in a row; where there are more, the row says how many."""


@dataclass(frozen=True, slots=True)
class SawRow:
    """One group of the table, all in words."""

    cut: str
    brick: str
    measures: str
    count: str
    ends: str
    where: str


def rows_of(saw: SawList, unit: str) -> tuple[SawRow, ...]:
    """Lengths, rips and corner units group by group; notches and skew cuts as one row, for only a drawing tells them
    apart."""
    return (
        *(_row(piece, unit) for piece in (*saw.pieces, *saw.rips)),
        *_drawn("notch", saw.notches),
        *_drawn("skew", saw.skews),
        *_rubbed(saw),
        *(_corner(corner, unit) for corner in saw.corners),
    )


def _row(piece: SawPiece, unit: str) -> SawRow:
    return SawRow(
        cut=f"{CUT_LETTERS[piece.cut]} {piece.cut}",
        brick=piece.brick,
        measures=f"{format_length(piece.length, unit)} x {format_length(piece.height, unit)}",
        count=f"{piece.count:,}",
        ends=_ends(piece),
        where=_where(piece.seats),
    )


def _ends(piece: SawPiece) -> str:
    if piece.cut != "length":
        return "a brick each"
    return "one factory end" if piece.has_factory_end else "cut at both ends"


def _drawn(cut: str, pieces: tuple[SawPiece, ...]) -> Iterator[SawRow]:
    if pieces:
        yield SawRow(
            cut=f"{CUT_LETTERS[cut]} {cut}",
            brick="; ".join(dict.fromkeys(piece.brick for piece in pieces)),
            measures=f"{counted(len(pieces), 'shape')}, drawn below",
            count=f"{sum(piece.count for piece in pieces):,}",
            ends="a brick each",
            where="at each drawing",
        )


def _rubbed(saw: SawList) -> Iterator[SawRow]:
    if saw.rubs:
        yield SawRow(
            cut="rub off",
            brick="; ".join(dict.fromkeys(piece.brick for piece in saw.rubs)),
            measures="a corner smaller than the kerf",
            count=f"{saw.rubbed:,}",
            ends="whole bricks, by hand",
            where=_where(tuple(seat for piece in saw.rubs for seat in piece.seats)),
        )


def _corner(corner: CornerCut, unit: str) -> SawRow:
    face, behind, height = (format_length(leg, unit) for leg in (corner.face_leg, corner.return_leg, corner.height))
    return SawRow(
        cut=f"{CUT_LETTERS[corner.cut]} {corner.cut}",
        brick=brick_words(corner.size, f"corner unit, {corner.hand}", corner.colour),
        measures=f"{face} on the face, {behind} on the return, {height} high",
        count=f"{corner.count:,}",
        ends="a corner unit each",
        where=_where(corner.seats),
    )


def _where(seats: tuple[Seat, ...]) -> str:
    more = len(seats) - PLACES
    return places_in_words(seats[:PLACES]) + (f" and {counted(more, 'more place')}" if more > 0 else "")
