"""A trimmed piece shorter than the least piece.

At jambs no piece smaller than the unit's width, the half bat: Masonry Construction magazine, *Bricking around
openings*.
"""

from collections.abc import Iterator

from app.brickwork.findings import Finding
from app.brickwork.layout import Layout
from app.lengths import format_length


def check(layout: Layout, unit: str) -> Iterator[Finding]:
    """One finding a small piece, at its middle; lengths in words in `unit`, "in" or "mm"."""
    least = format_length(layout.least_piece, unit)
    units = layout.units
    for piece, _, length, _, is_small, _ in layout.trim_rows():
        if is_small:
            x = float(units.x[piece] + units.width[piece] / 2)
            y = float(units.y[piece] + units.height[piece] / 2)
            text = (
                f"Piece {format_length(length, unit)} long in course {int(units.course[piece])}; the least is {least}."
            )
            yield Finding("small-piece", "warning", x, y, text)
