"""A trimmed piece shorter than the least piece.

At jambs no piece smaller than the unit's width, the half bat: Masonry Construction magazine, *Bricking around
openings*.
"""

from collections.abc import Iterator

import numpy as np

from app.brickwork.bond import KINDS, STANDING
from app.brickwork.borders import abouts
from app.brickwork.findings import Finding
from app.brickwork.lattice import Ints
from app.brickwork.layout import Layout
from app.lengths import format_length

_STANDING = [KINDS.index(kind) for kind in STANDING]


def check(layout: Layout, unit: str) -> Iterator[Finding]:
    """One finding a small piece, at its middle, about the edge it ends at; lengths in words in `unit`, "in" or "mm"."""
    units, trims = layout.units, layout.trims
    small = np.flatnonzero(trims.is_small)
    if not len(small):
        return
    piece = trims.unit[small]
    about = _abouts(layout, piece)
    zones = [_zone(layout, k, unit) for k in range(len(layout.regions))]
    x, y = units.x[piece] + units.width[piece] / 2, units.y[piece] + units.height[piece] / 2
    columns = (trims.length[small], units.course[piece], units.zone[piece], x, y)
    rows = zip(*(column.tolist() for column in columns), about, strict=True)
    for length, course, zone, at_x, at_y, name in rows:
        least, where = zones[zone]
        text = f"Piece {format_length(length, unit)} long in course {course}{where}; the least is {least}."
        yield Finding("small-piece", "warning", at_x, at_y, text, name)


def _abouts(layout: Layout, piece: Ints) -> list[str]:
    """The edge that each piece ends at, or else its course."""
    units, marks = layout.units, [_place(region.mark) for region in layout.regions]
    x, y = units.x[piece], units.y[piece]
    box = x, y, x + units.width[piece], y + units.height[piece]
    courses = zip(units.zone[piece].tolist(), units.course[piece].tolist(), strict=True)
    otherwise = [f"{marks[zone]} course {course}" for zone, course in courses]
    return abouts(layout, box, np.isin(units.kind[piece], _STANDING), otherwise)


def _place(mark: str) -> str:
    return mark if mark == "field" else f"zone {mark}"


def _zone(layout: Layout, zone: int, unit: str) -> tuple[str, str]:
    """The least piece of a region in words, and where its courses are counted."""
    region, typed = layout.regions[zone], layout.panel.least_piece
    least = region.size.half_bat if typed is None else typed
    return format_length(least, unit), "" if region.mark == "field" else f" of zone {region.mark}"
