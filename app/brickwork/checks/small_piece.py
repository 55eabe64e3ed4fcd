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
    units, zones = layout.units, [_zone(layout, k, unit) for k in range(len(layout.regions))]
    for piece, _, length, _, is_small, _ in layout.trim_rows():
        if is_small:
            x = float(units.x[piece] + units.width[piece] / 2)
            y = float(units.y[piece] + units.height[piece] / 2)
            least, where = zones[int(units.zone[piece])]
            course = int(units.course[piece])
            text = f"Piece {format_length(length, unit)} long in course {course}{where}; the least is {least}."
            yield Finding("small-piece", "warning", x, y, text)


def _zone(layout: Layout, zone: int, unit: str) -> tuple[str, str]:
    """The least piece of a region in words, and where its courses are counted."""
    region, typed = layout.regions[zone], layout.panel.least_piece
    least = region.size.half_bat if typed is None else typed
    return format_length(least, unit), "" if region.mark == "field" else f" of zone {region.mark}"
