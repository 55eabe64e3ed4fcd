"""A sliver too thin to be a brick: left as joint, so somebody should know."""

from collections.abc import Iterator

from app.brickwork.borders import abouts
from app.brickwork.findings import Finding
from app.brickwork.layout import Layout
from app.brickwork.pieces import bounds
from app.lengths import format_length


def check(layout: Layout, unit: str) -> Iterator[Finding]:
    """One finding a sliver, at its middle, about the edge that left it; lengths in words in `unit`, "in" or "mm"."""
    if not len(layout.left_out.unit):
        return
    box = bounds(layout.left_out)
    x0, y0, x1, y1 = (side.tolist() for side in box)
    otherwise = [f"height {(low + high) / 2:.0f}" for low, high in zip(y0, y1, strict=True)]
    about = abouts(layout, box, box[2] - box[0] > box[3] - box[1], otherwise)
    for left, low, right, high, name in zip(x0, y0, x1, y1, about, strict=True):
        text = (
            f"Sliver {format_length(right - left, unit)} x {format_length(high - low, unit)} left as joint;"
            f" thinner than {format_length(layout.smallest_cut, unit)}."
        )
        yield Finding("left-out", "note", (left + right) / 2, (low + high) / 2, text, name)
