"""What is to be cut, and how bricks are cut up for it, in a panel's results."""

from collections.abc import Sequence
from typing import Any

from app.documents.measure import Measured
from app.order.saw_values import CornerCut, Pattern, SawList, SawPiece, Seat

Document = dict[str, Any]


def saw(found: SawList, measured: Measured) -> Document:
    """Bricks with the proven bound beside them, patterns, and pieces by cut class; lengths in the project's unit."""
    return {
        "kerf": measured.length(found.kerf),
        "bricks": found.bricks,
        "bound": found.bound,
        "proven": found.is_proven,
        "first_fit": found.first_fit,
        "flat_pieces": found.flat_pieces,
        "bricks_by": [
            {"size": size, "kind": kind, "colour": colour, "bricks": bricks}
            for (size, kind, colour), bricks in found.bricks_by.items()
        ],
        "patterns": [_pattern(pattern, measured) for pattern in found.patterns],
        "pieces": _pieces(found.pieces, measured),
        "rips": _pieces(found.rips, measured),
        "notches": _pieces(found.notches, measured),
        "skews": _pieces(found.skews, measured),
        "rubs": _pieces(found.rubs, measured),
        "corners": [_corner(corner, measured) for corner in found.corners],
    }


def _pattern(pattern: Pattern, measured: Measured) -> Document:
    return {
        "times": pattern.times,
        "size": pattern.size,
        "kind": pattern.kind,
        "colour": pattern.colour,
        "length": measured.length(pattern.whole[0]),
        "pieces": [
            {"length": measured.length(piece.length), "factory_end": piece.has_factory_end} for piece in pattern.pieces
        ],
        "left_over": measured.length(pattern.left_over),
    }


def _pieces(pieces: Sequence[SawPiece], measured: Measured) -> list[Document]:
    return [
        {
            "size": piece.size,
            "kind": piece.kind,
            "colour": piece.colour,
            "length": measured.length(piece.length),
            "height": measured.length(piece.height),
            "count": piece.count,
            "factory_end": piece.has_factory_end,
            "outline": measured.outline(piece.outline),
            "places": _places(piece.seats),
        }
        for piece in pieces
    ]


def _corner(corner: CornerCut, measured: Measured) -> Document:
    return {
        "size": corner.size,
        "hand": corner.hand,
        "colour": corner.colour,
        "cut": corner.cut,
        "face": measured.length(corner.face_leg),
        "return": measured.length(corner.return_leg),
        "height": measured.length(corner.height),
        "count": corner.count,
        "places": _places(corner.seats),
    }


def _places(seats: Sequence[Seat]) -> list[Document]:
    return [{"panel": seat.panel, "zone": seat.zone, "course": seat.course, "count": seat.count} for seat in seats]
